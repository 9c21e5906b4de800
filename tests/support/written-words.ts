import type { BrowserContext, Page } from 'playwright-core';

/** A text that a canvas shows, px of the canvas element. */
interface Painted {
  readonly text: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

declare global {
  interface HTMLCanvasElement {
    painted?: Painted[] | undefined;
  }
}

/** Has every canvas of the pages to come remember what is written on it, as a canvas has no elements to ask. */
export async function rememberPainted(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const { prototype } = CanvasRenderingContext2D;
    const { fillText, clearRect } = prototype;
    /** A rectangle of the drawing in px of the canvas element, turned ones by their upright frame. */
    const onElement = (of: CanvasRenderingContext2D, x1: number, y1: number, x2: number, y2: number) => {
      const { a, b, c, d, e, f } = of.getTransform();
      const { canvas } = of;
      const across = canvas.clientWidth / canvas.width;
      const down = canvas.clientHeight / canvas.height;
      const corners = [
        [x1, y1],
        [x2, y1],
        [x1, y2],
        [x2, y2],
      ] as const;
      const xs = corners.map(([x, y]) => (a * x + c * y + e) * across);
      const ys = corners.map(([x, y]) => (b * x + d * y + f) * down);
      return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
    };
    prototype.fillText = function (text, x, y, ...rest) {
      const size = this.measureText(text);
      const box = onElement(
        this,
        x - size.actualBoundingBoxLeft,
        y - size.actualBoundingBoxAscent,
        x + size.actualBoundingBoxRight,
        y + size.actualBoundingBoxDescent,
      );
      this.canvas.painted = [...(this.canvas.painted ?? []), { text, ...box }];
      fillText.call(this, text, x, y, ...rest);
    };
    prototype.clearRect = function (x, y, width, height) {
      const { left, right, top, bottom } = onElement(this, x, y, x + width, y + height);
      const { clientWidth, clientHeight } = this.canvas;
      // What was written beyond the canvas's edge goes with all the rest.
      const all = left <= 0 && top <= 0 && right >= clientWidth && bottom >= clientHeight;
      this.canvas.painted = this.canvas.painted?.filter((each) => {
        const [across, down] = [(each.left + each.right) / 2, (each.top + each.bottom) / 2];
        if (all) return false;
        return across < left || across > right || down < top || down > bottom;
      });
      clearRect.call(this, x, y, width, height);
    };
  });
}

/**
 * What cannot be read on the page as it stands: words over other words, words covered in part, words cut off without both an
 * ellipsis and a title that says the whole. One line for each. What is scrolled out of sight is not on the page.
 */
export function unreadable(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    interface Box {
      readonly left: number;
      readonly top: number;
      readonly right: number;
      readonly bottom: number;
    }
    interface Word extends Box {
      readonly text: string;
      readonly of: Element;
      /** Of which each line is a word of its own. */
      readonly node: object;
    }
    /** px by which letters of two texts may come into one another's boxes: rounding, and what italics lean. */
    const SLACK = 1.5;
    /** px of paper around what is written on the drawing, which cover what they come over. */
    const RIM = 1;
    const faults = new Set<string>();
    const short = (text: string) => {
      const line = text.replaceAll(/\s+/g, ' ').trim();
      return line.length > 60 ? `${line.slice(0, 59)}…` : line;
    };
    const meet = (a: Box, b: Box): Box => ({
      left: Math.max(a.left, b.left),
      top: Math.max(a.top, b.top),
      right: Math.min(a.right, b.right),
      bottom: Math.min(a.bottom, b.bottom),
    });
    const large = ({ left, top, right, bottom }: Box, by: number) => right - left > by && bottom - top > by;
    const styles = new Map<Element, CSSStyleDeclaration>();
    const styleOf = (of: Element) => {
      const style = styles.get(of) ?? getComputedStyle(of);
      styles.set(of, style);
      return style;
    };

    // What takes no pointer is looked through otherwise.
    const taking = new CSSStyleSheet();
    taking.replaceSync('*, *::before, *::after { pointer-events: auto !important; }');
    document.adoptedStyleSheets.push(taking);

    interface Clip extends Box {
      readonly of: Element;
      readonly across: boolean;
      readonly down: boolean;
      readonly scrollsAcross: boolean;
      readonly scrollsDown: boolean;
    }
    const clips = new Map<Element, Clip | undefined>();
    const clipOf = (of: Element): Clip | undefined => {
      if (clips.has(of)) return clips.get(of);
      const style = styleOf(of);
      const [across, down] = [style.overflowX !== 'visible', style.overflowY !== 'visible'];
      let clip: Clip | undefined;
      if ((across || down) && of !== document.body && of !== document.documentElement) {
        const box = of.getBoundingClientRect();
        clip = {
          of,
          across,
          down,
          scrollsAcross: style.overflowX === 'auto' || style.overflowX === 'scroll',
          scrollsDown: style.overflowY === 'auto' || style.overflowY === 'scroll',
          left: box.left + of.clientLeft,
          top: box.top + of.clientTop,
          right: box.left + of.clientLeft + of.clientWidth,
          bottom: box.top + of.clientTop + of.clientHeight,
        };
      }
      clips.set(of, clip);
      return clip;
    };

    /** What of a box its frames leave, and whether what is missing can be scrolled to. */
    function seenOf(box: Box, of: Element): { seen: Box; cut: Element | undefined; scrolled: boolean } {
      let seen: Box = box;
      let cut: Element | undefined;
      let scrolled = false;
      let placed = styleOf(of).position;
      for (let at: Element | null = of; at; at = at.parentElement) {
        const fixed = placed === 'fixed';
        const skips = placed === 'absolute' && at !== of && styleOf(at).position === 'static';
        const clip = fixed || skips ? undefined : clipOf(at);
        if (clip) {
          const next = {
            left: clip.across ? Math.max(seen.left, clip.left) : seen.left,
            right: clip.across ? Math.min(seen.right, clip.right) : seen.right,
            top: clip.down ? Math.max(seen.top, clip.top) : seen.top,
            bottom: clip.down ? Math.min(seen.bottom, clip.bottom) : seen.bottom,
          };
          const lost = (was: number, is: number) => Math.abs(was - is) > SLACK;
          const across = lost(seen.left, next.left) || lost(seen.right, next.right);
          const down = lost(seen.top, next.top) || lost(seen.bottom, next.bottom);
          if ((across && clip.scrollsAcross) || (down && clip.scrollsDown)) scrolled = true;
          if ((across && !clip.scrollsAcross) || (down && !clip.scrollsDown)) cut ??= clip.of;
          seen = next;
        }
        const own = styleOf(at).position;
        if (own !== 'static') placed = own;
      }
      const window: Box = { left: 0, top: 0, right: innerWidth, bottom: innerHeight };
      return { seen: meet(seen, window), cut, scrolled };
    }

    const shown = (of: Element) =>
      of.checkVisibility({ opacityProperty: true, visibilityProperty: true }) &&
      !of.closest('.unseen') &&
      styleOf(of).clipPath !== 'inset(50%)';

    /** Letters reach less high than the line's box does. */
    function letters(box: Box, size: number): Box {
      const middle = (box.top + box.bottom) / 2;
      const half = Math.min((box.bottom - box.top) / 2, 0.4 * size);
      return { left: box.left, right: box.right, top: middle - half, bottom: middle + half };
    }

    /** Whether what is cut says so by its ellipsis, and its title the whole. */
    function ends(of: Element, cut: Element): boolean {
      const titled = of.closest('[title]');
      return titled !== null && styleOf(cut).textOverflow === 'ellipsis';
    }

    const words: Word[] = [];
    /** Takes a line of text up if it is to be seen; complains where it is cut off. */
    function take(text: string, box: Box, of: Element, size: number, node: object = of) {
      const line = letters(box, size);
      const { seen, cut, scrolled } = seenOf(line, of);
      if (!large(seen, 1)) {
        if (cut && !scrolled && line.right > line.left && !ends(of, cut))
          faults.add(`lost: “${short(text)}”`);
        return;
      }
      if (cut && !ends(of, cut)) faults.add(`cut off: “${short(text)}”`);
      words.push({ text, of, node, ...seen });
    }

    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const text = node.textContent ?? '';
      const of = node.parentElement;
      if (!of || text.trim() === '' || of.closest('script, style, option, textarea') || !shown(of)) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      const size = Number.parseFloat(styleOf(of).fontSize);
      for (const box of range.getClientRects()) if (box.width > 0) take(text, box, of, size, node);
    }
    // What stands in fields is no text of the page.
    const ruler = document.createElement('canvas').getContext('2d') as CanvasRenderingContext2D;
    for (const field of document.querySelectorAll<HTMLInputElement | HTMLSelectElement>('input, select')) {
      const text =
        field instanceof HTMLSelectElement
          ? field.selectedOptions[0]?.label
          : field.value || field.placeholder;
      if (!text || !shown(field)) continue;
      if (field instanceof HTMLInputElement && !['text', 'search', 'number', 'date'].includes(field.type))
        continue;
      const style = styleOf(field);
      const box = field.getBoundingClientRect();
      const pads = [style.paddingLeft, style.paddingRight].map(Number.parseFloat) as [number, number];
      ruler.font = style.font;
      const wide = ruler.measureText(text).width;
      const [left, right] = [box.left + field.clientLeft + pads[0], box.right - field.clientLeft - pads[1]];
      const room = right - left;
      if (wide > room + SLACK && !(style.textOverflow === 'ellipsis' && field.closest('[title]')))
        faults.add(`cut off in its field: “${short(text)}”`);
      const long = Math.min(wide, room);
      const [from, to] =
        style.textAlign === 'right' || style.textAlign === 'end'
          ? [right - long, right]
          : [left, left + long];
      take(
        text,
        { left: from, right: to, top: box.top, bottom: box.bottom },
        field,
        Number.parseFloat(style.fontSize),
      );
    }
    for (const canvas of document.querySelectorAll('canvas')) {
      if (!canvas.painted || !shown(canvas)) continue;
      const at = canvas.getBoundingClientRect();
      for (const { text, left, top, right, bottom } of canvas.painted) {
        const box = {
          left: at.left + left - RIM,
          right: at.left + right + RIM,
          top: at.top + top - RIM,
          bottom: at.top + bottom + RIM,
        };
        const { seen, cut } = seenOf(box, canvas);
        if (!large(seen, 0.5)) continue;
        if (cut) faults.add(`cut off: “${short(text)}” of the drawing`);
        words.push({ text, of: canvas, node: {}, ...seen });
      }
    }

    /** Whether another element covers a spot of a word. */
    function covered({ of }: Word, x: number, y: number): Element | undefined {
      const top = document.elementFromPoint(x, y);
      if (!top || top === of || of.contains(top)) return undefined;
      for (const each of document.elementsFromPoint(x, y)) {
        if (each === of || each.contains(of) || of.contains(each)) return undefined;
        // Canvases lie over one another and are clear; a plate is not.
        if (each instanceof HTMLCanvasElement) continue;
        const { backgroundColor, backgroundImage } = styleOf(each);
        const alpha = /^rgba\(.*, ([\d.]+)\)$/.exec(backgroundColor)?.[1];
        if (backgroundImage === 'none' && alpha !== undefined && Number(alpha) < 0.5) continue;
        return each;
      }
      return undefined;
    }

    const standing: Word[] = [];
    for (const word of words) {
      const { left, right, top, bottom } = word;
      const y = (top + bottom) / 2;
      const inset = Math.min(2, (right - left) / 4);
      const spots = [left + inset, right - inset];
      const covers = spots.map((x) => covered(word, x, y));
      const hidden = covers.filter((each) => each !== undefined).length;
      if (hidden > 0 && (hidden < spots.length || word.of instanceof HTMLCanvasElement)) {
        const by = covers.find((each) => each !== undefined) as Element;
        faults.add(
          `covered: “${short(word.text)}” by ${by.tagName.toLowerCase()} “${short(by.textContent ?? '')}”`,
        );
      }
      if (hidden < spots.length) standing.push(word);
    }
    standing.sort((a, b) => a.left - b.left);
    for (let i = 0; i < standing.length; i += 1)
      for (let j = i + 1; j < standing.length; j += 1) {
        const [a, b] = [standing[i] as Word, standing[j] as Word];
        if (b.left > a.right) break;
        if (a.node !== b.node && large(meet(a, b), SLACK))
          faults.add(`over one another: “${short(a.text)}” and “${short(b.text)}”`);
      }
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== taking);
    return [...faults];
  });
}

/** Frames alike after which nothing written looks for room any more: longer than the board waits before it does. */
const FRAMES_ALIKE = 15;

/** Waits until what is written on the canvases stands where it stays. */
export function paintedAtRest(page: Page): Promise<void> {
  return page.evaluate(
    (enough) =>
      new Promise<void>((done) => {
        let alike = 0;
        let before = '';
        const look = () => {
          const now = JSON.stringify([...document.querySelectorAll('canvas')].map(({ painted }) => painted));
          alike = now === before ? alike + 1 : 0;
          before = now;
          if (alike >= enough) done();
          else requestAnimationFrame(look);
        };
        requestAnimationFrame(look);
      }),
    FRAMES_ALIKE,
  );
}
