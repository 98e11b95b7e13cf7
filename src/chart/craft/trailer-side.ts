import { box, disc } from './path.js';
import { body, fitting, line, part, type View } from './view.js';

/** A trailer seen from the side, its coupling at the right. */
export const trailerSide: View = {
  name: 'trailer, side',
  width: 500,
  height: 132,
  marks: [
    part(
      'brackets',
      'M 96 42 L 104 42 L 106 74 L 92 74 Z M 256 44 L 264 44 L 266 74 L 252 74 Z M 330 46 L 338 46 L 340 74 L 326 74 Z',
      259,
      62,
    ),
    part('bunks', 'M 40 34 L 348 34 C 356 34 362 30 368 24 L 376 28 C 368 40 360 44 348 44 L 40 44 Z', 150, 39),
    line('M 44 39 L 346 39', 'faint'),
    body('M 30 74 L 372 74 L 478 92 L 478 103 L 370 87 L 30 87 Z'),
    part('cross-members', `${box(112, 76, 10, 9)} ${box(276, 76, 10, 9)} ${box(350, 76, 10, 9)}`, 281, 80),
    part('tube openings', `M 30 74 L 40 74 L 40 87 L 30 87 Z`, 34, 80),
    part('rollers', `${disc(60, 64, 8)} ${disc(300, 64, 8)} ${disc(398, 60, 8)}`, 398, 60),
    line(
      `${disc(60, 64, 2.5)} ${disc(300, 64, 2.5)} ${disc(398, 60, 2.5)} M 60 66 L 60 74 M 300 66 L 300 74 M 398 62 L 402 79`,
    ),
    fitting('M 404 80 L 416 82 L 430 30 L 420 28 Z'),
    fitting('M 414 26 L 440 32 L 438 40 L 412 34 Z'),
    line(disc(424, 46, 6)),
    fitting('M 440 86 L 446 87 L 446 126 L 440 126 Z'),
    line('M 434 126 L 452 126 M 443 78 L 443 70 M 437 70 L 449 70'),
    body('M 474 90 L 494 92 C 498 92 498 104 494 104 L 474 104 Z'),
    fitting(
      'M 150 74 C 150 48 172 40 194 40 C 216 40 238 48 238 74 L 228 74 C 228 56 212 50 194 50 C 176 50 160 56 160 74 Z',
    ),
    body(disc(194, 100, 28)),
    line(`${disc(194, 100, 17)} ${disc(194, 100, 5)}`),
    fitting(box(16, 66, 14, 10, 2)),
  ],
};
