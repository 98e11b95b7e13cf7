import { raisedTo } from '../../statistic/raised-to.js';
import type { Unit, UnitFactor } from './unit.js';

/** The unit of a product or quotient, and what its number must be multiplied by because units cancelled. */
export interface UnitProduct {
  readonly unit: Unit;
  readonly factor: number;
}

/** Dimensions that cancel against each other: a wage by the hour pays hours of work. */
function cancels(one: string, other: string): boolean {
  return (one === 'work' && other === 'time') || (one === 'time' && other === 'work');
}

/** The unit of left × right^power; a dimension found on both sides is said in the left one's word. */
export function multiplyUnits(left: Unit, right: Unit, power: 1 | -1 = 1): UnitProduct {
  const factors: UnitFactor[] = [...left];
  let factor = 1;
  for (const { word, power: own } of right) {
    const wanted = own * power;
    const same = factors.findIndex(
      (one) =>
        one.word.dimension === word.dimension || (cancels(one.word.dimension, word.dimension) && one.power === -wanted),
    );
    const kept = factors[same];
    if (kept === undefined) factors.push({ word, power: wanted });
    else {
      if (kept.word.size !== word.size) factor *= raisedTo(word.size / kept.word.size, wanted);
      factors[same] = { word: kept.word, power: kept.power + wanted };
    }
  }
  return { unit: factors.filter((one) => one.power !== 0), factor };
}

/** The unit of left ÷ right. */
export function divideUnits(left: Unit, right: Unit): UnitProduct {
  return multiplyUnits(left, right, -1);
}
