import type { Page } from 'playwright-core';

/** Opens everything that folds. */
export async function openAll(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) {
      details.removeAttribute('name');
      details.open = true;
    }
  });
}

/** By how many pixels the page is wider than its window. */
export function widerThanWindow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** What is cut off: elements that hold more than they show and do not scroll, but for those meant for screen readers alone. */
export function cutOff(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('main *')].flatMap((element) => {
      const { overflowX, overflowY, clipPath } = getComputedStyle(element);
      const across = overflowX === 'hidden' && element.scrollWidth > element.clientWidth + 1;
      const down = overflowY === 'hidden' && element.scrollHeight > element.clientHeight + 1;
      return (across || down) && clipPath === 'none' ? [`${element.tagName} ${element.className}`] : [];
    }),
  );
}

/** What paper would lose: elements that would have to be scrolled to be read whole. */
export function scrolledOnPaper(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('main *')].flatMap((element) => {
      const { overflowX, overflowY, clipPath } = getComputedStyle(element);
      const across = overflowX !== 'visible' && element.scrollWidth > element.clientWidth + 1;
      const down = overflowY !== 'visible' && element.scrollHeight > element.clientHeight + 1;
      return (across || down) && clipPath === 'none' ? [`${element.tagName} ${element.id} ${element.className}`] : [];
    }),
  );
}

/**
 * Targets that break WCAG 2.2, 2.5.8: smaller than 24 by 24 pixels, and nearer to another target than a circle of 24 around
 * each allows. Links within a line of text, and parts of a drawing, which the table beside it lists again, are excepted there.
 */
export function crowdedTargets(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const inLine = 'p a, .contents ~ ul a, dd a, .mark, section li a, svg a';
    const all = [...document.querySelectorAll<HTMLElement>('a[href], button, select, input, summary')]
      .filter((target) => !target.matches(inLine) && target.checkVisibility())
      .map((target) => ({ target, box: target.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && box.right > 0);
    return all.flatMap(({ target, box }) => {
      if (box.width >= 24 && box.height >= 24) return [];
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      const crowded = all.some(({ target: other, box: near }) => {
        if (other === target) return false;
        const small = near.width < 24 || near.height < 24;
        const [across, down] = small
          ? [near.x + near.width / 2 - x, near.y + near.height / 2 - y]
          : [Math.max(near.left - x, 0, x - near.right), Math.max(near.top - y, 0, y - near.bottom)];
        return Math.hypot(across, down) < (small ? 24 : 12);
      });
      return crowded ? [`${target.tagName} ${target.textContent.slice(0, 40)} ${box.width} × ${box.height}`] : [];
    });
  });
}

/** By how much the page's layout moved since it was opened (Layout Instability, https://wicg.github.io/layout-instability/). */
export function layoutMoved(page: Page): Promise<number> {
  return page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        let sum = 0;
        new PerformanceObserver((list) => {
          for (const entry of list.getEntries()) sum += (entry as PerformanceEntry & { value: number }).value;
        }).observe({ type: 'layout-shift', buffered: true });
        setTimeout(() => resolve(sum), 150);
      }),
  );
}
