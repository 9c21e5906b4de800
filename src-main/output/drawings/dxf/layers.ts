import { DxfWriter, LayerFlags, Units } from '@tarikjabiri/dxf';
import type { Part, Role } from '../../../../shared-math/drawing/index.ts';
import { type LengthUnit, MM_PER_INCH } from '../../../../shared-math/units/index.ts';

/** The layers of every drawing, named after what is on them, with their colour numbers (group code 62 of the DXF reference): legible on black and white. */
export const DXF_LAYERS = {
  axle: 7,
  wheels: 8,
  steering: 5,
  location: 34,
  rails: 7,
  obstacles: 8,
  shaft: 94,
  ground: 8,
  hardpoints: 1,
  dimensions: 6,
} as const;

export type DxfLayer = keyof typeof DXF_LAYERS;

const LAYERS_OF: Record<Role, DxfLayer> = {
  ground: 'ground',
  tyre: 'wheels',
  frame: 'rails',
  axle: 'axle',
  link: 'location',
  spring: 'location',
  box: 'steering',
  steering: 'steering',
  obstacle: 'obstacles',
};

/** The layer that a part is on. */
export function layerOf({ id, role }: Part): DxfLayer {
  return id.startsWith('shaft-') ? 'shaft' : LAYERS_OF[role];
}

export const BROKEN = 'BROKEN';

/** How a drawing's mm become its own unit. */
export const inUnit = (unit: LengthUnit) => (mm: number) => (unit === 'in' ? mm / MM_PER_INCH : mm) + 0;

/** An empty drawing: layers, a line type for what is no part, and the unit in its header. */
export function newDrawing(unit: LengthUnit): DxfWriter {
  const dxf = new DxfWriter();
  dxf.setUnits(unit === 'in' ? Units.Inches : Units.Millimeters);
  dxf.setVariable('$MEASUREMENT', { 70: unit === 'in' ? 0 : 1 });
  const size = inUnit(unit);
  dxf.addLType(BROKEN, 'Broken __ _ __ _', [size(30), -size(8), size(6), -size(8)]);
  for (const [name, colour] of Object.entries(DXF_LAYERS))
    dxf.addLayer(name, colour, 'Continuous', LayerFlags.None);
  return dxf;
}

/** Text as the format takes it: one line, signs beyond ASCII as \U+XXXX, which every reader knows. */
export function dxfText(text: string): string {
  return [...text.replace(/[\p{Cc}\s]+/gu, ' ').trim()]
    .map((letter) => {
      if (letter === '°') return '%%d';
      if (letter === '%') return '%%%';
      if (letter === '^') return '^ ';
      if (letter === '\\') return '/';
      const code = letter.codePointAt(0) as number;
      if (code < 0x7f) return letter;
      return code > 0xffff ? '?' : `\\U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
    })
    .join('');
}
