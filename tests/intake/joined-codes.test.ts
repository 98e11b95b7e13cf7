import { expect, test } from 'vitest';
import { asideOf, importSmall, valuesOf } from './small-import.js';

const crosswalk = `
crosswalk: looks
files:
  - files: stations.csv
    table: stations
    columns: { station: { field: station } }
    constants: { name: Elk, setting: launch, time_zone: America/Denver }
  - files: forms.csv
    table: inspections
    time_zone: America/Denver
    columns:
      form: { field: inspection }
      start: { field: started_at, pattern: yyyy-MM-dd HH:mm }
    constants: { station: elk, direction: arriving, extent: full, watercraft_type: open motorboat, outcome: cleared }
  - files: looks.csv
    table: checks
    missing: [""]
    combine:
      state: { columns: [looked, found], codes: { "Y none": clean, "Y mussels": fouled, "N": not checked, "Oui, là": fouled } }
    columns:
      form: { field: inspection }
      part: { field: component }
    constants: { side: none }
`;

test('a blank beside a code that stands alone is what the crosswalk says of it, and any other blank is not guessed', async () => {
  const stations = 'station\nelk\n';
  const looks = 'form,part,looked,found\nF1,bilge,Y,none\nF1,anchor,N,\nF1,hold,Y,\nF1,transom,Y,mussels\nF1,zincs,,\n';
  const result = await importSmall(crosswalk, {
    'stations.csv': stations,
    'forms.csv': 'form,start\nF1,2025-06-01 08:00\n',
    'looks.csv': looks,
  });
  expect(result.problems).toEqual([]);
  expect(valuesOf(result, 'checks', 'state')).toEqual(['clean', 'not checked', 'fouled']);
  expect(asideOf(result)).toEqual(['4 looked unknown-code', '6 looked missing-value']);
});

test('joined cells may end in any letter, and a dash of any length may stand for missing', async () => {
  const crosswalkOf = crosswalk.replace('missing: [""]', 'missing: ["", "—"]');
  const looks = 'form,part,looked,found\nF1,bilge,"Oui,",là\nF1,anchor,N,—\nF1,hold,—,—\n';
  const result = await importSmall(crosswalkOf, {
    'stations.csv': 'station\nelk\n',
    'forms.csv': 'form,start\nF1,2025-06-01 08:00\n',
    'looks.csv': looks,
  });
  expect(result.problems).toEqual([]);
  expect(valuesOf(result, 'checks', 'state')).toEqual(['fouled', 'not checked']);
  expect(asideOf(result)).toEqual(['4 looked missing-value']);
});
