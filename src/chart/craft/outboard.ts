import { bladesShape, hubShape } from './equipment.js';
import { box, oval } from './path.js';
import { again, body, fitting, type Line, line, part, type View } from './view.js';

const middle = 95;

/** What holds an outboard to a transom that runs from 94 across and 96 down to 106 across and 174 down, seen from starboard. */
export const outboardBracket: readonly Line[] = [
  fitting('M 84 88 L 100 93 L 104 122 L 92 126 L 86 116 Z'),
  fitting('M 56 86 L 88 86 L 84 118 L 82 168 L 58 168 L 60 140 Z'),
  line('M 66 90 L 64 164', 'faint'),
];

/** An outboard on that bracket; it stands before the transom. */
export const outboardFromSide: View['marks'] = [
  body('M 40 62 C 37 48 46 42 58 42 L 78 43 C 90 44 95 52 94 63 L 92 86 L 46 86 Z'),
  part('cooling system', 'M 49 68 L 86 68 L 84 80 L 52 80 Z', 62, 74),
  line('M 41 62 L 94 63'),
  part('cavitation plate', 'M 32 168 L 92 168 L 95 173 L 35 173 Z', 84, 170.5),
  part('zincs', 'M 42 173 L 54 173 L 50 181 L 45 181 Z', 48, 177),
  part(
    'outboard lower unit',
    'M 60 173 L 84 173 L 84 181 C 93 184 99 189 100 194 C 97 200 86 203 76 203 L 48 202 L 46 185 L 60 183 Z M 64 203 L 82 203 L 72 222 L 66 221 Z',
    90,
    193,
  ),
  part('water intakes', box(67, 178, 13, 4, 1), 74, 180),
  part(
    'propeller',
    'M 34 186 L 47 185 L 47 202 L 34 201 Z M 42 186 C 31 181 29 168 37 164 C 44 170 46 178 45 186 Z M 42 201 C 31 206 31 220 38 224 C 45 217 47 209 45 201 Z',
    38,
    172,
  ),
  part('exhaust hub', oval(33, 193.5, 4, 7.5), 31, 194),
];

/** An outboard in the middle of a transom, seen from astern. */
export const outboardFromAstern: View['marks'] = [
  fitting('M 82 46 L 108 46 L 104 60 L 104 136 L 86 136 L 86 60 Z'),
  fitting('M 76 52 L 114 52 L 110 74 L 80 74 Z'),
  body('M 70 40 C 68 18 74 6 82 4 L 108 4 C 116 6 122 18 120 40 L 116 52 L 74 52 Z'),
  again('cooling system', 'M 78 26 L 112 26 L 110 42 L 80 42 Z'),
  again(
    'outboard lower unit',
    'M 90 141 L 100 141 L 104 148 L 104 166 L 97 170 L 96 186 L 94 186 L 93 170 L 86 166 L 86 148 Z',
  ),
  again('cavitation plate', 'M 66 136 L 124 136 L 122 141 L 68 141 Z'),
  again('propeller', bladesShape(middle, 157, 24)),
  again('exhaust hub', hubShape(middle, 157, 6.5)),
];
