import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { root } from '../command/run.js';

const folder = join(root, 'tests/golden/pictures');

/** A part of a picture, as shares of its width and height. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Makes a picture the golden one of its name where ACCEPT_PICTURES=1 asks for it, after somebody looked at it. */
export function acceptPicture(name: string, picture: Buffer): void {
  if (process.env.ACCEPT_PICTURES !== '1') return;
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, `${name}.png`), picture);
}

/**
 * The share of pixels in which a picture differs visibly from the golden one of its name, or 1 where their sizes differ.
 * What lies in `words` is not compared, since fonts differ between machines. `page` is an empty page of a browser, which
 * decodes both.
 */
export async function differenceFrom(
  name: string,
  picture: Buffer,
  words: readonly Box[],
  page: Page,
): Promise<number> {
  const file = join(folder, `${name}.png`);
  if (!existsSync(file)) throw new Error(`there is no golden picture ${name}: look at it and accept it`);
  const addresses = [readFileSync(file), picture].map((bytes) => `data:image/png;base64,${bytes.toString('base64')}`);
  return page.evaluate(
    async ({ both, apart }) => {
      const pixels = await Promise.all(
        both.map(async (address) => {
          const image = new Image();
          image.src = address;
          await image.decode();
          const canvas = new OffscreenCanvas(image.width, image.height);
          const context = canvas.getContext('2d')!;
          context.drawImage(image, 0, 0);
          return context.getImageData(0, 0, image.width, image.height);
        }),
      );
      const [golden, now] = [pixels[0]!, pixels[1]!];
      if (Math.abs(golden.width - now.width) > 1 || Math.abs(golden.height - now.height) > 1) return 1;
      const [width, height] = [Math.min(golden.width, now.width), Math.min(golden.height, now.height)];
      let differ = 0;
      for (let y = 0; y < height; y++) {
        for (let x = 0; x < width; x++) {
          const [across, down] = [(x + 0.5) / width, (y + 0.5) / height];
          if (apart.some((box) => across > box.left && across < box.right && down > box.top && down < box.bottom))
            continue;
          const [one, other] = [(y * golden.width + x) * 4, (y * now.width + x) * 4];
          if ([0, 1, 2].some((at) => Math.abs(golden.data[one + at]! - now.data[other + at]!) > 60)) differ++;
        }
      }
      return differ / (width * height);
    },
    { both: addresses, apart: words },
  );
}
