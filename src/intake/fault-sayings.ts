import type { FieldRule } from './crosswalk.js';
import { describeFault } from './describe-fault.js';
import type { Fault } from './fault.js';
import type { Saying } from './remark.js';

const mostKnown = 1024;

/** What is said of faults, each described once: an unknown code is compared with every known one, and slips repeat. */
export class FaultSayings {
  readonly #known = new Map<string, Saying>();

  /** Why a cell sets its row aside; `seen` is its text as a ledger may show it. */
  of(found: Fault, rule: FieldRule, seen: string): Saying {
    const name = `${found} ${rule.field.name} ${seen}`;
    let saying = this.#known.get(name);
    if (saying === undefined) {
      saying = describeFault(found, rule, seen);
      if (this.#known.size === mostKnown) this.#known.clear();
      this.#known.set(name, saying);
    }
    return saying;
  }
}
