import { Resvg } from '@resvg/resvg-js';

/** A PNG at another width, as red, green, blue and alpha, read by the picture library and not by what wrote it. */
export function pixelsOf(
  png: Uint8Array,
  width: number,
): { width: number; height: number; rgba: Uint8Array } {
  const view = new DataView(png.buffer, png.byteOffset, png.byteLength);
  const [wide, high] = [view.getUint32(16), view.getUint32(20)];
  const height = Math.round((high * width) / wide);
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><image width="${width}" height="${height}" preserveAspectRatio="none" href="data:image/png;base64,${Buffer.from(png).toString('base64')}"/></svg>`;
  const image = new Resvg(svg, { font: { loadSystemFonts: false } }).render();
  return { width: image.width, height: image.height, rgba: image.pixels };
}

/** How far two pictures of one size are apart: the mean difference of a channel, and the share of pixels that are another. */
export function difference(a: Uint8Array, b: Uint8Array): { mean: number; others: number } {
  let sum = 0;
  let others = 0;
  for (let i = 0; i < a.length; i += 4) {
    let most = 0;
    for (let channel = 0; channel < 3; channel += 1) {
      const apart = Math.abs((a[i + channel] as number) - (b[i + channel] as number));
      sum += apart;
      most = Math.max(most, apart);
    }
    if (most > 64) others += 1;
  }
  return { mean: sum / (0.75 * a.length), others: others / (a.length / 4) };
}
