import { describe, expect, it } from 'vitest';
import { drawnComponents, regionsOf } from '../../../src/chart/craft/craft-drawing.js';
import { drawings } from '../../../src/chart/craft/drawings.js';
import { pointsOf } from '../../../src/chart/craft/path.js';
import { isRegion } from '../../../src/chart/craft/view.js';
import { drive } from '../../../src/record/codes.js';
import { components, mayCarry } from '../../../src/record/components.js';

const craft = drawings.filter(({ watercraftType }) => watercraftType !== null);
const untold = craft.flatMap(({ anyDrive }) => anyDrive ?? []);
const all = [...drawings, ...untold].map((drawing) => [`${drawing.title}, ${drawing.drive}`, drawing] as const);

function bounds(d: string): { left: number; right: number; top: number; bottom: number } {
  const points = pointsOf(d);
  const [across, down] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return {
    left: Math.min(...across),
    right: Math.max(...across),
    top: Math.min(...down),
    bottom: Math.max(...down),
  };
}

describe('drawings', () => {
  it.each(craft.map((drawing) => [drawing.title, drawing] as const))(
    '%s has a region for every part of the catalogue that it carries, and for no other',
    (_, drawing) => {
      const carried = components.filter((part) => mayCarry(part, drawing.watercraftType, drawing.drive));
      expect([...drawnComponents(drawing)].sort()).toEqual(carried.map(({ component }) => component).sort());
    },
  );

  it.each(untold.map((drawing) => [drawing.watercraftType!, drawing] as const))(
    'of any %s whose drive is not recorded have a region for every part that one of them carries, and for no other',
    (type, drawing) => {
      const carried = components.filter((part) => mayCarry(part, type, null));
      expect([...drawnComponents(drawing)].sort()).toEqual(carried.map(({ component }) => component).sort());
    },
  );

  it('stand for any drive wherever parts hang on the drive', () => {
    const hangs = (type: string): boolean =>
      new Set(
        [null, ...drive.codes.map(({ code }) => code)].map((one) =>
          components
            .filter((part) => mayCarry(part, type, one))
            .map(({ component }) => component)
            .join(),
        ),
      ).size > 1;
    const engined = craft.filter((one) => one.drive !== null && hangs(one.watercraftType!));
    expect(untold.map(({ name }) => name)).toEqual(engined.map(({ name }) => name));
    expect(untold.length).toBeGreaterThan(3);
  });

  it('of the trailer has a region for every part of a trailer', () => {
    const trailer = drawings.find(({ name }) => name === 'trailer')!;
    const parts = components.filter(({ area }) => area === 'trailer').map(({ component }) => component);
    expect([...drawnComponents(trailer)].sort()).toEqual([...parts].sort());
  });

  it('together show every part of the catalogue', () => {
    const drawn = new Set(drawings.flatMap(drawnComponents));
    expect(components.map(({ component }) => component).filter((component) => !drawn.has(component))).toEqual([]);
  });

  it.each(all)('%s has a side and a stern view, and one place for each part’s label, within the part', (_, drawing) => {
    const names = drawing.views.map(({ view }) => view.name).join(' ');
    expect(names).toMatch(/side/);
    expect(names).toMatch(/stern/);
    const labelled = regionsOf(drawing).filter(({ at }) => at !== null);
    expect(labelled.map(({ component }) => component).sort()).toEqual([...drawnComponents(drawing)].sort());
    for (const { component, d, at } of labelled) {
      const box = bounds(d);
      expect(at![0], component).toBeGreaterThanOrEqual(box.left);
      expect(at![0], component).toBeLessThanOrEqual(box.right);
      expect(at![1], component).toBeGreaterThanOrEqual(box.top);
      expect(at![1], component).toBeLessThanOrEqual(box.bottom);
    }
  });

  it('keep every line within the frame of its view, in absolute coordinates, and every region closed', () => {
    for (const [title, { views }] of all) {
      for (const { view } of views) {
        for (const mark of view.marks) {
          expect(mark.d, `${title}, ${view.name}`).toMatch(/^[MLCQZ0-9 .-]+$/);
          if (isRegion(mark)) expect(mark.d.trim(), `${title}: ${mark.component}`).toMatch(/Z$/);
          const box = bounds(mark.d);
          const inside =
            box.left >= -6 && box.top >= -14 && box.right <= view.width + 6 && box.bottom <= view.height + 6;
          expect(inside, `${title}, ${view.name}: ${mark.d.slice(0, 60)}`).toBe(true);
        }
      }
    }
  });
});
