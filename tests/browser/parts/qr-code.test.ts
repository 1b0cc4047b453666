/** The code as a camera's reader sees it: drawn, rendered to pixels, and decoded by an independent library. */

import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import '../../../src/ui/parts/qr-code.ts';
import { mounted, one } from './mount.ts';

const ADDRESS = 'https://192.168.7.20:4443/#/listen/from?v=1';
const LINKS = [
  `${ADDRESS}&span=180`,
  `${ADDRESS}&belt=own&density=7.74%20g%2Fm%20%C2%B1%200.06%20g%2Fm&pitch=2%20mm&span=7%2C1%20in&known=0.5&from=6&to=9&ends=pulley%2Cclip&lie=flat`,
  `${ADDRESS}&note=${'x'.repeat(900)}`,
];

async function pixelsOf(svg: Element, sizePx: number): Promise<ImageData> {
  const drawn = svg.cloneNode(true) as SVGElement;
  drawn.querySelector('rect')!.setAttribute('fill', getComputedStyle(svg.querySelector('rect')!).fill);
  drawn.querySelector('path')!.setAttribute('fill', getComputedStyle(svg.querySelector('path')!).fill);
  drawn.setAttribute('width', String(sizePx));
  drawn.setAttribute('height', String(sizePx));
  const image = new Image();
  image.src = `data:image/svg+xml,${encodeURIComponent(new XMLSerializer().serializeToString(drawn))}`;
  await image.decode();
  const context = Object.assign(document.createElement('canvas'), { width: sizePx, height: sizePx }).getContext('2d')!;
  context.drawImage(image, 0, 0, sizePx, sizePx);
  return context.getImageData(0, 0, sizePx, sizePx);
}

describe('a code', () => {
  it.each(LINKS)('is read back as the link that it was made from: %#', async (link) => {
    const part = await mounted('qr-code', { text: link, label: 'code' }, 240);
    const { data, width, height } = await pixelsOf(one(part, 'svg'), 480);
    expect(jsQR(data, width, height)?.data).toBe(link);
  });

  it('has white about it for four modules, in the dark too', async () => {
    const part = await mounted('qr-code', { text: LINKS[0]!, label: 'code' }, 240);
    const modules = Number(one(part, 'svg').getAttribute('viewBox')!.split(' ')[2]);
    const { data } = await pixelsOf(one(part, 'svg'), modules); // a pixel a module
    const isWhite = (x: number, y: number) => data[4 * (y * modules + x)] === 255;
    for (let along = 0; along < modules; along++) {
      for (let deep = 0; deep < 4; deep++) {
        expect(
          isWhite(along, deep) && isWhite(deep, along) && isWhite(along, modules - 1 - deep) && isWhite(modules - 1 - deep, along),
        ).toBe(true);
      }
    }
    expect(isWhite(4, 4)).toBe(false);
  });

  it('draws nothing of nothing', async () => {
    const part = await mounted('qr-code', { text: '', label: 'code' });
    expect(part.renderRoot.querySelector('svg')).toBeNull();
  });
});
