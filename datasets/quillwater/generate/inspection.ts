import type { Moment } from './calendar.js';
import type { Craft } from './craft.js';
import type { Look } from './looks.js';
import type { Station } from './stations.js';
import type { Wash } from './washes.js';

/** One craft looked over once, as it was and as it was written down. */
export interface Inspection {
  /** Numbered within its season and export format when the season is put in order. */
  number: string;
  readonly season: number;
  readonly station: Station;
  readonly started: Moment;
  readonly finished: Moment;
  readonly direction: 'arriving' | 'leaving' | 'roadside';
  readonly extent: 'full' | 'paper check';
  readonly craft: Craft;
  /** Whether the hull number was written down. */
  readonly craftKnown: boolean;
  readonly lastWater: string | null;
  readonly lastOnWater: number | null;
  readonly moored: boolean | null;
  readonly nextWater: string | null;
  readonly hauledBy: 'owner' | 'commercial';
  readonly water: 'yes' | 'damp' | 'no';
  readonly vegetation: boolean;
  readonly risk: 'low' | 'medium' | 'high';
  readonly inspector: string;
  readonly memo: string;
  outcome: string;
  looks: readonly Look[];
  /** A second, blind walk, when and by whom; null where there was none. */
  readonly recheck: { readonly looks: readonly Look[]; readonly at: Moment; readonly inspector: string } | null;
  wash: Wash | null;
  /** Another inspection that this one repeats under a number of its own. */
  repeats: Inspection | null;
  /** Whether nothing may be spoilt here, because another spoilt place leans on it. */
  protected: boolean;
  /** Whether an importer that follows the rules keeps it. */
  kept: boolean;
}
