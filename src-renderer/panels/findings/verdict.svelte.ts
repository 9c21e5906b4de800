import { createContext } from 'svelte';
import type { Finding } from '../../../shared-math/findings/index.ts';
import { toDegrees } from '../../../shared-math/units/index.ts';
import { Late } from '../../controls/late.svelte.ts';
import type { CarClearances } from '../../document/clearances.svelte.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import type { Pose } from '../../document/reach.ts';
import { JobClient } from '../../jobs/job-client.ts';
import { Latest } from '../../jobs/latest.ts';
import { type Clock, PAGE_CLOCK, Throttle } from '../../jobs/throttle.ts';
import { remedied, remedyLabel } from './remedies.ts';
import { startVerdictWorker } from './start-verdict-worker.ts';
import type { Judged, VerdictQuestion } from './verdict-job.ts';
import { type ListedFinding, listed, type VerdictList } from './verdict-list.ts';

/** ms between two judgements of a layout that is being dragged. */
const SPACING = 200;

/**
 * The findings on the open layout. They follow every change at most five times a second, judged beside the page: a
 * judgement costs milliseconds that a drag does not have, and nobody reads sentences faster. What is acted on is judged
 * on the page, at once.
 */
export class Verdict {
  readonly #openLayout: OpenLayout;
  readonly #throttle: Throttle;
  readonly #clearances: Pick<CarClearances, 'now'> | null;

  readonly #latest: Latest<VerdictQuestion, undefined, Judged>;
  /** The rules, for what is judged on the page. */
  readonly here = new Late(
    () => import('./judge-here.ts'),
    (module) => module,
  );
  /** The unit and limits that were asked for last, empty before the first: another unit or limit is answered at once. */
  #read = '';

  /** Of a layout of a moment ago while one is being dragged; null until the first judgement. */
  judged: Judged | null = $state.raw(null);
  /** In the reader's unit and by the shop's limits. */
  list: VerdictList = $derived.by(() => listed(this.judged?.findings ?? []));

  #chosen: string | null = $state(null);

  constructor(
    openLayout: OpenLayout,
    clock: Clock = PAGE_CLOCK,
    clearances: Pick<CarClearances, 'now'> | null = null,
    client: JobClient = new JobClient(startVerdictWorker),
  ) {
    this.#openLayout = openLayout;
    this.#clearances = clearances;
    this.#throttle = new Throttle(SPACING, () => this.#ask(), clock);
    this.#latest = new Latest(client, 'verdict', {
      answer: (answer) => {
        this.judged = answer;
      },
      // The page can do it too, only not beside a drag.
      broken: () => void this.#judgeHere(),
    });
  }

  /** Run as an effect: has the layout judged whenever something is another than before that the findings are of. */
  follow(): void {
    const question = this.#question();
    if (!question) {
      this.#throttle.stop();
      this.#latest.forget();
      this.judged = null;
      this.#read = '';
      return;
    }
    const read = JSON.stringify([question.style, question.limits]);
    if (this.#read !== '' && read !== this.#read) void this.#judgeHere();
    else this.#throttle.ask();
    this.#read = read;
  }

  /** What there is to be judged now; undefined if no layout is open. */
  #question(): VerdictQuestion | undefined {
    const { document, lengthStyle: style, settings } = this.#openLayout;
    const clearances = this.#clearances?.now ?? undefined;
    return document ? { document, clearances, style, limits: $state.snapshot(settings.limits) } : undefined;
  }

  #ask(): void {
    const question = this.#question();
    if (question) this.#latest.ask(question);
  }

  /** On the page, at once; an answer that is still on its way is of no use any more. Returns whether the rules were there for it. */
  async #judgeHere(): Promise<boolean> {
    this.#throttle.stop();
    this.#latest.forget();
    if (!this.here.value) await this.here.fetch();
    const rules = this.here.value;
    if (!rules) return false;
    const question = this.#question();
    this.judged = question ? rules.judged(question, this.#openLayout.frontEnd) : null;
    return true;
  }

  /** Makes sure that what is acted on is what stands on the board now; returns whether it is. */
  async #bringUpToDate(): Promise<boolean> {
    return this.#throttle.waiting || this.#latest.busy ? this.#judgeHere() : true;
  }

  /** Ids of the two parts that the chosen finding lies between, as the drawing has them; none where it is of one. */
  get chosenParts(): readonly string[] {
    const chosen = [...this.list.toMend, ...this.list.inOrder].find((entry) => this.isChosen(entry));
    return chosen?.finding.between?.parts ?? [];
  }

  /** Whether a finding is the chosen one: it was chosen last, and its part still is on the board. */
  isChosen({ key, finding }: ListedFinding): boolean {
    return this.#chosen === key && this.#openLayout.selection === finding.part;
  }

  /** Chooses a finding, and on the board the part that it is about; a second time lets go of both. */
  choose(entry: ListedFinding): void {
    const letGo = this.isChosen(entry);
    this.#chosen = letGo ? null : entry.key;
    this.#openLayout.selection = letGo ? null : entry.finding.part;
  }

  /** Takes a finding's remedy as one step of undo, and judges at once. Tells whether it was taken. */
  async mend(key: string): Promise<boolean> {
    if (!(await this.#bringUpToDate())) {
      this.#openLayout.tell(
        'Nothing was moved: a part of the program could not be loaded. If Toeboard is not running any more, start it.',
      );
      return false;
    }
    const entry = [...this.list.toMend, ...this.list.inOrder].find((each) => each.key === key);
    const { document } = this.#openLayout;
    if (!entry?.finding.remedy || !document) return false;
    this.#chosen = key;
    this.#openLayout.selection = entry.finding.part;
    const taken = this.#openLayout.edits.change(
      remedyLabel(entry.finding),
      remedied(document, entry.finding.remedy),
    );
    if (taken) void this.#judgeHere();
    return taken;
  }

  /** What else a finding's move puts right, worked out on the page: for one that is chosen, with nothing being dragged. */
  async alsoMended({ finding }: ListedFinding): Promise<readonly Finding[]> {
    await this.here.fetch();
    const question = this.#question();
    if (!question || !this.here.value) return [];
    const list = this.list.toMend.map((each) => each.finding);
    return this.here.value.alsoMended(question.document, finding, list, question);
  }

  /** The pose that a finding was measured in, as the controls have it; undefined if it has none. */
  poseOf({ at }: Finding): Pose | undefined {
    return at && { heave: at.heave, roll: toDegrees(at.roll), handwheel: toDegrees(at.handwheel) };
  }

  /** Whether the car stands in a finding's pose. */
  isShown(finding: Finding): boolean {
    const wanted = this.poseOf(finding);
    const { heave, roll, handwheel } = this.#openLayout.carPose.pose;
    return (
      wanted !== undefined &&
      Math.abs(heave - wanted.heave) < 0.01 &&
      Math.abs(roll - wanted.roll) < 0.001 &&
      Math.abs(handwheel - wanted.handwheel) < 0.01
    );
  }

  /** Puts the car into the pose that a finding was measured in, or back to ride height from there. */
  show(entry: ListedFinding): void {
    const pose = this.poseOf(entry.finding);
    if (!pose) return;
    if (this.isShown(entry.finding)) this.#openLayout.carPose.toRide();
    else {
      this.#chosen = entry.key;
      this.#openLayout.selection = entry.finding.part;
      const { gap, between, severity } = entry.finding;
      const { document } = this.#openLayout;
      if (gap && between && document) {
        const { distance, words, parts } = between;
        const [from, to] = gap;
        this.#openLayout.showGap({
          document,
          pose,
          from,
          to,
          distance,
          words,
          parts,
          under: severity !== 'info',
        });
      } else this.#openLayout.carPose.set(pose);
    }
  }
}

/** The one of the page, for its components. */
export const [getVerdict, setVerdict] = createContext<Verdict>();
