import * as codes from '../codes.js';
import type { TableDefinition } from '../field.js';
import { code, date, instant, needed, number, pseudonym, reference, text, yesOrNo } from '../fields.js';

/** Inspections; the parent of checks, rechecks and washes. */
export const inspections: TableDefinition = {
  name: 'inspections',
  row: 'one craft looked over once',
  key: ['inspection'],
  fields: [
    needed(text('inspection', 'The form’s number.')),
    needed(reference('station', 'stations', 'Where it was made.')),
    needed(instant('started_at', 'When it began.')),
    instant('finished_at', 'When it ended.'),
    needed(code('direction', codes.direction, 'Which way the craft was going.')),
    needed(code('extent', codes.extent, 'Whether the craft itself was looked over.')),
    needed(code('watercraft_type', codes.watercraftType, 'The kind of craft.')),
    code('propulsion', codes.propulsion, 'What moves it.'),
    code('drive', codes.drive, 'How its engine drives it.'),
    code('hull_material', codes.hullMaterial, 'What its hull is made of.'),
    number('length_ft', 'feet', [3, 200], 'Its length.'),
    yesOrNo('antifouling_paint', 'Whether its hull carries antifouling paint.'),
    code('hauled_by', codes.haul, 'Who pulled it.'),
    pseudonym('craft', 'Stands for one craft, so that repeat visits can be counted.'),
    text('home_region', 'The state or province it is registered in, as a postal code.'),
    reference('last_waterbody', 'waterbodies', 'The water it was in last.'),
    date('last_on_water', 'The day it was last on the water.'),
    yesOrNo('moored', 'Whether it lay in the water for more than a day at its last water.'),
    reference('next_waterbody', 'waterbodies', 'The water it is bound for.'),
    yesOrNo('standing_water', 'Whether undrained water was found.'),
    yesOrNo('vegetation', 'Whether plants were found.'),
    code('risk', codes.risk, 'Risk by the screening interview.'),
    needed(code('outcome', codes.outcome, 'How it ended.')),
    pseudonym('inspector', 'Stands for one inspector.'),
  ],
};
