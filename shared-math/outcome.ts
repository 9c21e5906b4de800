/** A value that was worked out, or the named reason why there is none. Callers have to look before they use it. */
export type Outcome<Value, Failure> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly failure: Failure };

export function succeeded<Value>(value: Value): { readonly ok: true; readonly value: Value } {
  return { ok: true, value };
}

export function failed<Failure>(failure: Failure): { readonly ok: false; readonly failure: Failure } {
  return { ok: false, failure };
}
