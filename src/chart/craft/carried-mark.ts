import { componentOf, mayCarry } from '../../record/components.js';
import { fitting, isRegion, type Line, type Region } from './view.js';

/** A mark as it stands on a craft of some type, its drive as may be: what none of them is built to carry is no part of it. */
export function carriedMark(mark: Line | Region, watercraftType: string | null): Line | Region {
  if (!isRegion(mark) || mayCarry(componentOf(mark.component)!, watercraftType, null)) return mark;
  return fitting(mark.d);
}
