/** What the tests use of the library `dxf`, which brings no types. */
declare module 'dxf' {
  export class Helper {
    constructor(text: string);
    readonly parsed: { readonly entities: readonly { readonly type: string; readonly r?: number }[] };
    toPolylines(): {
      readonly polylines: readonly { readonly vertices: readonly (readonly [number, number])[] }[];
    };
  }
}
