import {
  arcsDetail,
  detailRadius,
  detailScaleWords,
  gapTick,
  isWithin,
  judgedView,
} from '../../../../../shared-math/detail/index.ts';
import { joined } from '../../../../../shared-math/drawing/index.ts';
import type { BoardView } from '../../../../board/board-view.svelte.ts';
import { toScreen } from '../../../../board/camera.ts';
import { type Contribution, piece } from '../../../../board/contributor.ts';
import { whenever } from '../../../../controls/whenever.svelte.ts';
import type { OpenLayout } from '../../../../document/open-layout.svelte.ts';
import DetailButton from './DetailButton.svelte';
import DetailTitle from './DetailTitle.svelte';
import { detailMarks } from './detail-marks.ts';
import { placeDetail } from './detail-place.ts';
import { beyondWords, type DetailWords, detailSentence, NO_PATH, SIGNS } from './detail-words.ts';

const LETTER = 'A';

/**
 * The detail of the arcs on the board: a circle round the steering-arm ball, and beside the view what lies in it, drawn
 * larger. It goes along with whatever is dragged, and with the heave.
 */
export const detailOnBoard =
  (openLayout: OpenLayout, shown: () => boolean, toggle: () => void) =>
  (view: BoardView): Contribution => {
    const on = $derived(judgedView(openLayout.frontEnd));
    /** By the travel alone: a plain number, so that a drag leaves the detail where it stands. */
    const radius = $derived(detailRadius(openLayout.held.heave));
    const stands = $derived(
      openLayout.document !== null && shown() && view.shown.includes(on) && !view.eyes[on],
    );
    const place = $derived.by(() => {
      if (!stands || view.size.width === 0) return undefined;
      const { weight } = view;
      const boxOf = (each: (typeof view.shown)[number]) => view.coveredBeside('detail', each);
      return placeDetail({
        view: on,
        radius,
        own: boxOf(on),
        all: view.shown.map(boxOf).reduce(joined),
        size: view.room,
        scale: view.scaleAlone(),
        weight,
      });
    });
    whenever(
      () => ({ here: place, occasion: view.occasion }),
      ({ here, occasion }) => view.putBeside('detail', here && { view: on, box: here.box }, occasion),
    );

    const detail = $derived(stands ? arcsDetail(openLayout.held, openLayout.settings.unit) : undefined);
    /** As the circle shows it, which may be less than the whole travel. */
    const inCircle = $derived.by(() => {
      if (!detail || !place) return undefined;
      const circle = { ...detail.circle, radius: place.radius };
      const { frontEnd, carPose } = openLayout;
      const { heave } = carPose.pose;
      const within = { view: detail.view, circle };
      return {
        ...detail,
        circle,
        ticks: detail.ticks.map((tick) => ({
          ...tick,
          within: isWithin(circle, tick.asked) && isWithin(circle, tick.allowed),
        })),
        present: gapTick(frontEnd, within, heave),
      };
    });

    return {
      id: 'detail',
      overlay: (source) => {
        if (!inCircle || !place || !source.shown.includes(inCircle.view)) return {};
        const lengths = { length: source.length, fineLength: source.fineLength };
        const { roll, braking } = openLayout.carPose.pose;
        const leftOut = roll !== 0 || braking !== 0 ? 'by the heave alone: no roll, brakes off' : '';
        const words: DetailWords = {
          letter: LETTER,
          ...lengths,
          none: NO_PATH,
          signs: SIGNS,
          aside: beyondWords(inCircle.ticks, lengths) || leftOut,
        };
        return detailMarks({
          ...source,
          detail: inCircle,
          place,
          present: inCircle.present,
          words,
          ofSheet: (at) => toScreen(view.camera, at),
        });
      },
      above: piece(DetailTitle, {
        get place() {
          return place;
        },
        get title() {
          return place ? `Detail ${LETTER} (${detailScaleWords(place.times)})` : '';
        },
        get sentence() {
          if (!inCircle) return '';
          const lengths = {
            length: (mm: number) => openLayout.length(mm),
            fineLength: (mm: number) => openLayout.fineLength(mm),
          };
          return detailSentence(inCircle, inCircle.present, lengths);
        },
      }),
      button: piece(DetailButton, {
        get shown() {
          return openLayout.settings.arcsDetail;
        },
        toggle,
      }),
    };
  };
