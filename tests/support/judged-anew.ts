import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { leastClearances } from '../../shared-math/clearance/index.ts';
import { analyse, findings, type ShopLimits, withClearances } from '../../shared-math/findings/index.ts';
import { type LayoutDocument, parseLayout, resolveLayout } from '../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import { sweepTurn } from '../../shared-math/sweep/index.ts';
import { toDegrees } from '../../shared-math/units/index.ts';
import { toeboard } from './command-line.ts';

// A layout judged from its document alone, by the commands and the rules that judge any other: nothing of how it came about
// is known here.

/** Each thing that must not be driven, as a sentence; none where all is well. */
export async function stopsOf(document: LayoutDocument, limits: ShopLimits = {}): Promise<string[]> {
  const text = JSON.stringify(document);
  const read = parseLayout(text);
  if (!read.ok) return [`no layout: ${read.failure.path} ${read.failure.reason}`];
  const layout = resolveLayout(read.value);
  const frontEnd = prepareFrontEnd(layout);
  const turn = sweepTurn(frontEnd, 0, 0);
  if (turn.status !== 'ok' || turn.count < 2) return [`does not steer: ${turn.status}`];
  const judged = findings(withClearances(analyse(layout)), { unit: 'mm', fraction: 16 }, limits);
  const stops = judged.filter(({ severity }) => severity === 'stop').map(({ sentence }) => sentence);
  const { pairs } = leastClearances(frontEnd, {
    right: turn.right.handwheel,
    left: turn.left.handwheel,
  });
  const hits = pairs
    .filter(({ distance, assumed }) => distance <= 0 && !assumed)
    .map(({ nameOfA, nameOfB }) => `${nameOfA} hits ${nameOfB}`);
  const locks = [turn.right.handwheel, 0, turn.left.handwheel].map(toDegrees);
  return [...stops, ...hits, ...(await saidByCommands(text, read.value, locks))];
}

/** What the commands `check` and `sweep` object to, the sweep over travel and turn. */
async function saidByCommands(
  text: string,
  document: LayoutDocument,
  locks: readonly number[],
): Promise<string[]> {
  const folder = mkdtempSync(join(tmpdir(), 'toeboard-judged-'));
  try {
    const file = join(folder, 'layout.json');
    writeFileSync(file, text);
    const check = await toeboard('check', file);
    const said = JSON.parse(check.out) as { valid: boolean; stops: string[] };
    const { bump, rebound: droop, roll } = document.travel;
    const found = [...(said.valid ? [] : ['not valid']), ...said.stops];
    for (const handwheel of locks) {
      // A little short of the lock: at it a rounded angle may lie beyond.
      const at = String(handwheel * 0.999);
      const sweep = await toeboard(
        'sweep',
        file,
        `--heave=${-droop}:${bump}:${(bump + droop) / 8}`,
        `--roll=${-roll}:${roll}:${roll}`,
        `--handwheel=${at}`,
      );
      const { rows } = JSON.parse(sweep.out) as { rows: { heave: number; roll: number; status: string }[] };
      for (const row of rows)
        if (row.status !== 'ok')
          found.push(`${row.status} at heave ${row.heave}, roll ${row.roll}, handwheel ${at}`);
    }
    return found;
  } finally {
    rmSync(folder, { recursive: true });
  }
}
