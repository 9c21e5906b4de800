import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import type { Shell } from '../../document/shell.svelte.ts';

/** What a step points at: a point on the board, or whatever carries that `data-walk` mark. */
export type WalkTarget = { readonly point: string } | { readonly mark: string };

/** One stop of the walk. What it asks for is done on the board itself, and never needed to go on. */
export interface WalkStep {
  readonly title: string;
  readonly words: string;
  readonly target: WalkTarget;
  /** Said once it was done. */
  readonly after: string;
  /** Brings what it points at into sight. */
  readonly enter?: (openLayout: OpenLayout, shell: Shell) => void;
  /** What is read when the step begins and again later: it was done once that is another. Absent where there is nothing to do. */
  readonly watched?: (openLayout: OpenLayout) => unknown;
}

const showBoard = (openLayout: OpenLayout, shell: Shell) => {
  shell.arranged = null;
  shell.openHome();
  if (openLayout.enlarged !== null) openLayout.enlarge(null);
};

/** What the walk speaks of is to be seen, whatever the shop keeps folded. */
const unfold = (openLayout: OpenLayout, what: 'sliders' | 'curves') => {
  openLayout.settings.folded = { ...openLayout.settings.folded, [what]: false };
};

/** In the order of the walk. */
export const WALK: readonly WalkStep[] = [
  {
    title: 'Drag this ball',
    words:
      'It is the pitman ball, the frame end of the drag link. Press on it and drag it up or down: the whole travel is worked out anew as you drag.',
    target: { point: 'steering.box.pitmanBall' },
    after: 'The curves and the verdict went along with it.',
    enter: showBoard,
    watched: ({ document }) => document?.steering.box.pitmanBall.join(),
  },
  {
    title: 'Watch the curve',
    words:
      'It shows how far the wheels steer by themselves from droop to bump. Flat is what you are after; the large figure at the right is the worst of it.',
    target: { mark: 'curves' },
    after: '',
    enter: (openLayout, shell) => {
      showBoard(openLayout, shell);
      unfold(openLayout, 'curves');
    },
  },
  {
    title: 'Move the axle',
    words: 'Drag Heave, or type a figure beside it. All views show the car as it stands then.',
    target: { mark: 'pose' },
    after: 'The key R brings it back to ride height.',
    enter: (openLayout, shell) => {
      showBoard(openLayout, shell);
      unfold(openLayout, 'sliders');
    },
    watched: ({ carPose }) => carPose.pose.heave,
  },
  {
    title: 'Read the verdict',
    words:
      'What is past its limit stands first, with the figure, the limit and where that comes from. Click one to see the part. Where one move cures it, a button makes the move.',
    target: { mark: 'column' },
    after: '',
    enter: (openLayout, shell) => {
      showBoard(openLayout, shell);
      shell.column = 'verdict';
    },
  },
  {
    title: 'Undo it',
    words: 'Undo as often as you like, over a reload too. Every state also stands in the history beside it.',
    target: { mark: 'undo' },
    after: 'Nothing you try is lost.',
    watched: ({ history }) => history.undone.length,
  },
  {
    title: 'Print it',
    words:
      'Drawings, lists and templates come from here. Open it, look the pages over, and save them as a PDF.',
    target: { mark: 'place-sheet' },
    after: '',
  },
];
