import { z } from 'zod';
import { layoutSchema } from './schema.ts';
import { LAYOUT_VERSION } from './version.ts';

/** What is refused beyond what JSON Schema can say; it stands in the published form, so that a writer of one knows. */
const BEYOND = [
  'The left wheel centre stands at positive y, the right one at negative y.',
  'A kingpin has its top above its bottom.',
  'The tie rod ball and the drag link ball do not lie on the line of their kingpin, nor the pitman ball on that of the sector shaft.',
  'No link, bar, rail section, tube or shaft between two joints has both ends on one spot, and no direction is [0, 0, 0].',
  'The seat of a leaf lies between its two eyes along the car.',
  'The eye of a quarter-elliptic spring stands ahead of its clamp on the line from butt, within 45° of it.',
  'The fixed eye of a spring across stands further out from its clamp than above or below it.',
  'The keys of origins are hardpoints of this layout, and of a mirrored pair only one is named.',
  'There is one intermediate shaft fewer than joints, supports name one of those shafts, and joints stand apart.',
  'A solid rod has no wall, a wall is less than half of its tube, and a thread is shorter than its end.',
  'Flats lie within their round, and no more leaves run the whole length than there are.',
  'Keys that are not named here are refused, $schema among them.',
  'The text of the file is at most 2,000,000 characters, with no key twice in one object.',
];

const ABOUT = [
  'The front end of one car with a solid front axle. Millimetres, degrees, newtons and kilograms, unless a field says otherwise.',
  'Axes of ISO 8855: x forward, y left, z up, right-handed; the origin is on the ground in the centre plane below the front axle centre at ride height, with the wheels straight ahead.',
  'A hardpoint is named by its path in the document with the side spelled out, as axle.right.kingpinTop, also where the right side is "mirror".',
  `Earlier versions than ${LAYOUT_VERSION} are read too and are not described here.`,
  'Beside what this schema says, a document is refused unless all of this holds:',
  ...BEYOND.map((line) => `- ${line}`),
  'The command check says whether a document is taken, and what in it contradicts itself.',
].join('\n');

/**
 * The published form of the layout document: a JSON Schema (draft 2020-12) of what may be written, with what each field
 * is, its unit and its signs. What has a default may be left out.
 */
export function layoutJsonSchema(): object {
  const { $schema, ...form } = z.toJSONSchema(layoutSchema, {
    target: 'draft-2020-12',
    io: 'input',
    override: ({ jsonSchema }) => {
      // A list that TypeScript may not change is no list that a writer may not write.
      delete jsonSchema.readOnly;
    },
  });
  return {
    $schema,
    title: `Layout document, version ${LAYOUT_VERSION}`,
    ...form,
    description: ABOUT,
  };
}
