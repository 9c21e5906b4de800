/** A word that code does not use, what to write in its place, and a line that has it. */
export interface ForbiddenWord {
  readonly word: RegExp;
  readonly instead: string;
  readonly example: string;
}

/** In comments. */
export const IN_COMMENTS: readonly ForbiddenWord[] = [
  {
    word: /\bnothing where\b/i,
    instead: 'returns undefined if',
    example: '/** The way back; nothing where there is none. */',
  },
  {
    // Between backquotes stands a name, which may be one that files and the command line have had from the beginning.
    word: /(?<!`|')\b(?:un)?told\b(?!`|')/i,
    instead: 'given, specified, reported, known: as it means',
    example: '// What is told of a road.',
  },
  {
    word: /\bin the way\b/i,
    instead: 'obstacle',
    example: '/* What is in the way. */',
  },
];

/** Among the names of the code. */
export const IN_NAMES: readonly ForbiddenWord[] = [
  {
    word: /^(?:told|Told|[a-z]\w*Told)$|(?:^|_)TOLD(?:_|$)/,
    instead: 'given, reported or status',
    example: 'const told = 1;',
  },
  { word: /^(?:Matter|matterOf)$/, instead: 'SheetModel', example: 'declare const x: Matter;' },
  { word: /^(?:Wish|OutputWish)$/, instead: 'OutputRequest', example: 'declare const x: Wish;' },
  { word: /^(?:Leaves|LeafFacts)$/, instead: 'PageFrame, PageFacts', example: 'declare const x: Leaves;' },
  {
    word: /^(?:Desk|OutputDesk|Courier|Ears)$/,
    instead: 'JobRunner, JobClient, JobListener',
    example: 'new Desk();',
  },
  { word: /^(?:Stand|standPoints)$/, instead: 'FramePose', example: 'declare const x: Stand;' },
  { word: /InTheWay/, instead: 'obstacle', example: 'const boxInTheWay = 1;' },
  {
    word: /^(?:rebound(?!Damping)[A-Z]\w*|REBOUND_\w*|FLAG_REBOUND\w*)$/,
    instead: 'droop, but for a damper',
    example: 'const reboundStop = 1;',
  },
];

const PIECES =
  /(?<comment>\/\*[\s\S]*?\*\/|<!--[\s\S]*?-->|(?<=^|[\s;{}(),])\/\/[^\n]*)|(?<text>'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*")/gm;

/** Parts a source into what is comment and what is code; plain texts are left out, names inside of templates count as code. */
export function partsOf(source: string): { comments: string[]; code: string } {
  const comments: string[] = [];
  // The text of a page between its tags is read by people: of a component only the script is code.
  const scripts = [...source.matchAll(/<script[^>]*>[\s\S]*?<\/script>/g)].map(([script]) => script);
  const pieces =
    scripts.length > 0
      ? [...scripts, ...(source.match(/<!--[\s\S]*?-->|\/\*[\s\S]*?\*\//g) ?? [])]
      : [source];
  const code = pieces.join('\n').replace(PIECES, (piece, ...rest) => {
    const { comment } = rest.at(-1) as { comment?: string };
    if (comment !== undefined) comments.push(piece);
    return ' ';
  });
  return { comments, code };
}

/** Each forbidden word of a source, as "word: write … instead". */
export function forbiddenIn(source: string): string[] {
  const { comments, code } = partsOf(source);
  const names = new Set(code.match(/[A-Za-z_$][\w$]*/g) ?? []);
  return [
    ...comments.flatMap((comment) =>
      IN_COMMENTS.flatMap(({ word, instead }) => {
        // A comment runs over several lines: a word pair may be parted by the start of the next.
        const match = word.exec(comment.replace(/\n\s*\*?\s*/g, ' '));
        return match ? [`"${match[0]}" in a comment: write ${instead}`] : [];
      }),
    ),
    ...[...names].flatMap((name) =>
      IN_NAMES.filter(({ word }) => word.test(name)).map(({ instead }) => `${name}: call it ${instead}`),
    ),
  ];
}
