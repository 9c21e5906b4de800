import type { JointSide, ShaftEnd, ShaftStock } from '../../../shared-math/layout/index.ts';
import { failed, type Outcome, succeeded } from '../../../shared-math/outcome.ts';
import {
  USUAL_BOLT,
  USUAL_DOUBLE_D,
  USUAL_SCREW,
  USUAL_SEAT,
  USUAL_TEETH,
} from '../../../shared-math/shaft/index.ts';
import { parseLength } from '../../../shared-math/units/index.ts';

// Ends, joint ends and stock as forms to be filled in: what each kind is called, which figures it has, and usual ones to
// begin with (common practice, no published source: the mate is measured before anything is ordered).

/** One figure or choice of a part, by its place: `diameter`, `bolt.fromFace`. */
export interface FitField {
  readonly path: string;
  readonly words: string;
  readonly type: 'length' | 'count' | 'pitch' | 'module' | 'form' | 'ends' | 'material';
  /** May be left out. */
  readonly optional?: boolean;
}

export interface FitKind<Value> {
  readonly words: string;
  readonly usual: Value;
  readonly fields: readonly FitField[];
}

export const FORM_CHOICES = [
  ['involute-30', 'involute, 30°'],
  ['involute-37.5', 'involute, 37.5°'],
  ['involute-45', 'involute, 45°'],
  ['metric-30', 'metric, 30°'],
  ['metric-37.5', 'metric, 37.5°'],
  ['metric-45', 'metric, 45°'],
  ['reference-30', 'reference diameter, 30°'],
  ['serrated', 'serrated, straight-sided'],
  ['unidentified', 'not identified yet'],
] as const;
export const ENDS_CHOICES = [
  ['both', 'at both ends'],
  ['column', 'at the column end'],
  ['box', 'at the box end'],
] as const;
export const MATERIAL_CHOICES = [
  ['', 'not chosen'],
  ['steel', 'plain steel'],
  ['stainless', 'stainless steel'],
] as const;

const field = (
  path: string,
  words: string,
  type: FitField['type'] = 'length',
  optional = false,
): FitField => ({
  path,
  words,
  type,
  ...(optional ? { optional } : {}),
});

const DIAMETER = field('diameter', 'Diameter');
const FLATS = field('acrossFlats', 'Across the flats');
const LONG = field('length', 'Formed for', 'length', true);
const SPLINE = [
  field('form', 'Teeth', 'form'),
  field('teeth', 'Count, all around', 'count'),
  field('pitch', 'Pitch, per inch', 'pitch', true),
  field('module', 'Module, mm', 'module', true),
  field('diameter', 'Over the teeth'),
];
const BORE = field('bore', 'Bore');
const DEEP = [
  field('depth', 'Bore is deep', 'length', true),
  field('reach', 'Face to joint’s centre', 'length', true),
];
const BOLT = [
  field('bolt.diameter', 'Pinch bolt'),
  field('bolt.fromFace', 'Bolt from the face'),
  field('bolt.offset', 'Bolt from the bore’s axis'),
];
const SCREW = [field('screw.diameter', 'Set screw'), field('screw.fromFace', 'Screw from the face')];

export const END_KINDS: { readonly [Kind in ShaftEnd['kind']]: FitKind<Extract<ShaftEnd, { kind: Kind }>> } =
  {
    round: { words: 'round', usual: { kind: 'round', diameter: 19.05 }, fields: [DIAMETER, LONG] },
    'double-d': {
      words: 'double-D',
      usual: { kind: 'double-d', ...USUAL_DOUBLE_D },
      fields: [DIAMETER, FLATS, LONG],
    },
    spline: { words: 'splined', usual: { kind: 'spline', ...USUAL_TEETH }, fields: [...SPLINE, LONG] },
  };

export const SIDE_KINDS: {
  readonly [Kind in JointSide['kind']]: FitKind<Extract<JointSide, { kind: Kind }>>;
} = {
  weld: {
    words: 'round bore, to weld',
    usual: { kind: 'weld', bore: 19.1, ...USUAL_SEAT },
    fields: [BORE, ...DEEP],
  },
  'double-d-set-screw': {
    words: 'double-D, set screw',
    usual: { kind: 'double-d-set-screw', bore: 19.1, acrossFlats: 14.27, ...USUAL_SEAT, screw: USUAL_SCREW },
    fields: [BORE, FLATS, ...DEEP, ...SCREW],
  },
  'double-d-pinch-bolt': {
    words: 'double-D, pinch bolt',
    usual: { kind: 'double-d-pinch-bolt', bore: 19.1, acrossFlats: 14.27, ...USUAL_SEAT, bolt: USUAL_BOLT },
    fields: [BORE, FLATS, ...DEEP, ...BOLT],
  },
  'spline-pinch-bolt': {
    words: 'splined, pinch bolt',
    usual: { kind: 'spline-pinch-bolt', ...USUAL_TEETH, ...USUAL_SEAT, bolt: USUAL_BOLT },
    fields: [...SPLINE, ...DEEP, ...BOLT],
  },
  spline: {
    words: 'splined',
    usual: { kind: 'spline', ...USUAL_TEETH, ...USUAL_SEAT, screw: USUAL_SCREW },
    fields: [...SPLINE, ...DEEP, ...SCREW],
  },
};

export const STOCK_KINDS: {
  readonly [Kind in ShaftStock['kind']]: FitKind<Extract<ShaftStock, { kind: Kind }>>;
} = {
  round: {
    words: 'solid round',
    usual: { kind: 'round', diameter: 19.05 },
    fields: [DIAMETER, field('material', 'Steel', 'material', true)],
  },
  'double-d-end': {
    words: 'round with a double-D end',
    usual: { kind: 'double-d-end', ...USUAL_DOUBLE_D, ends: 'both', formed: 90 },
    fields: [
      DIAMETER,
      FLATS,
      field('ends', 'Formed', 'ends'),
      field('formed', 'Formed for'),
      field('material', 'Steel', 'material', true),
    ],
  },
  'double-d': {
    words: 'double-D, full length',
    usual: { kind: 'double-d', ...USUAL_DOUBLE_D },
    fields: [DIAMETER, FLATS, field('material', 'Steel', 'material', true)],
  },
  splined: {
    words: 'splined ends',
    usual: { kind: 'splined', ...USUAL_TEETH, ends: 'both', formed: 45 },
    fields: [
      ...SPLINE,
      field('ends', 'Formed', 'ends'),
      field('formed', 'Formed for'),
      field('material', 'Steel', 'material', true),
    ],
  },
};

export type Fit = ShaftEnd | JointSide | ShaftStock;

/** What stands at a field's place; undefined if it is left out. */
export function fieldValue(fit: Fit, path: string): number | string | undefined {
  let value: unknown = fit;
  for (const key of path.split('.')) value = (value as Record<string, unknown> | undefined)?.[key];
  return typeof value === 'number' || typeof value === 'string' ? value : undefined;
}

/** How the size of a form's teeth is given: inch forms by their pitch, metric ones by their module, serrations not at all. */
function toothSizes(form: string): readonly ('pitch' | 'module')[] {
  if (form === 'serrated') return [];
  if (form === 'unidentified') return ['pitch', 'module'];
  return form.startsWith('involute') ? ['pitch'] : ['module'];
}

/** Without the tooth size that a form does not have. */
function withoutSize({ pitch, module, ...rest }: Record<string, unknown>, form: string) {
  const sizes = toothSizes(form);
  return {
    ...rest,
    ...(pitch !== undefined && sizes.includes('pitch') ? { pitch } : {}),
    ...(module !== undefined && sizes.includes('module') ? { module } : {}),
  };
}

/** The fields that a part has to fill in: of a spline only the tooth size that its form has. */
export function fieldsOf(fit: Fit, fields: readonly FitField[]): readonly FitField[] {
  if (!('teeth' in fit)) return fields;
  const sizes: readonly string[] = toothSizes(fit.form);
  return fields.filter(({ type }) => (type !== 'pitch' && type !== 'module') || sizes.includes(type));
}

/** A copy with a field's value set, or left out. Of a bolt or screw that is not there yet the other figures are usual ones. */
export function withField<Value extends Fit>(
  fit: Value,
  path: string,
  value: number | string | undefined,
): Value {
  const [group, key] = path.split('.') as [string, string?];
  const record = fit as unknown as Record<string, unknown>;
  if (key !== undefined) {
    const usual = group === 'bolt' ? USUAL_BOLT : USUAL_SCREW;
    return { ...fit, [group]: { ...usual, ...(record[group] as object | undefined), [key]: value } };
  }
  const { [group]: _, ...others } = record;
  const rest = group === 'form' ? withoutSize(others, String(value)) : others;
  return (value === undefined || value === '' ? rest : { ...rest, [group]: value }) as unknown as Value;
}

/** Another kind of the same sort, with what the two have in common kept. */
export function asKind<Value extends Fit>(was: Value | undefined, usual: Value): Value {
  if (!was) return usual;
  const kept: Record<string, unknown> = {};
  const old = was as unknown as Record<string, unknown>;
  for (const key of Object.keys(usual)) if (key !== 'kind' && old[key] !== undefined) kept[key] = old[key];
  const merged = { ...usual, ...kept } as Record<string, unknown>;
  // A spline's teeth are kept whole: a pitch that was not known is not made up from the usual one.
  if ('teeth' in old && 'teeth' in merged)
    for (const key of ['pitch', 'module'] as const) {
      if (old[key] === undefined) delete merged[key];
      else merged[key] = old[key];
    }
  const across = (fit: Record<string, unknown>) => (fit['bore'] ?? fit['diameter']) as number;
  const flats = merged['acrossFlats'];
  // Flats that would not cut the round that was kept are made in proportion to it.
  if (typeof flats === 'number' && flats >= across(merged)) {
    const plain = usual as unknown as Record<string, unknown>;
    merged['acrossFlats'] = ((plain['acrossFlats'] as number) / across(plain)) * across(merged);
  }
  return merged as unknown as Value;
}

/** Reads what was typed into a field. mm; counts as whole numbers. */
export function readField(
  { type, optional }: FitField,
  typed: string,
  unit: 'in' | 'mm',
): Outcome<number | undefined, string> {
  if (typed.trim() === '') return optional ? succeeded(undefined) : failed('a figure is needed here');
  if (type === 'count' || type === 'pitch' || type === 'module') {
    if (!/^\d{1,3}(\.\d+)?(\/\d{1,3})?$/.test(typed.trim())) return failed('a number is expected');
    const value = Number.parseFloat(typed);
    return type === 'count' && !Number.isInteger(value) ? failed('teeth come whole') : succeeded(value);
  }
  const length = parseLength(typed, unit);
  if (!length.ok) return length;
  return length.value > 0 ? succeeded(length.value) : failed('a size is more than nothing');
}
