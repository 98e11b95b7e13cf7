import * as codes from '../codes.js';
import type { TableDefinition } from '../field.js';
import { code, instant, needed, number, reference, text } from '../fields.js';

/** A wash whose `released_at` is open at the data's cut-off is held, not short. */
export const decontaminations: TableDefinition = {
  name: 'decontaminations',
  row: 'one wash of one craft',
  key: ['wash'],
  fields: [
    needed(text('wash', 'The wash record’s number.')),
    needed(reference('inspection', 'inspections', 'The inspection that ordered it.')),
    code('reason', codes.washReason, 'Why it was ordered.'),
    needed(instant('ordered_at', 'When it was ordered.')),
    instant('started_at', 'When the wash began; open while the craft waits.'),
    instant('finished_at', 'When the wash ended; open while it goes on.'),
    instant('released_at', 'When the craft was let go; open while it is held.'),
    code('ending', codes.washEnding, 'How it ended; open while the craft is held.'),
    code('method', codes.washMethod, 'How it was washed.'),
    reference('unit', 'wash_units', 'The unit that washed it.'),
    number('contact_temp_f', 'degrees F', [32, 212], 'Water temperature where it touched the part.'),
    number('nozzle_temp_f', 'degrees F', [32, 212], 'Water temperature at the nozzle.'),
    number('stand_off_ft', 'feet', [0, 20], 'Distance from nozzle to part.'),
    number('contact_seconds', 'seconds', [0, 3600], 'How long the water touched the part.'),
    number('flush_minutes', 'minutes', [0, 240], 'How long the engine was flushed.'),
    number('flush_exit_temp_f', 'degrees F', [32, 212], 'Water temperature where the flush came out.'),
    code('effluent', codes.effluent, 'What became of the water.'),
    code('recheck_result', codes.recheckResult, 'What a look after the wash showed.'),
  ],
};
