// An invented season as an export would give it, with about 0.2 % of its cells spoilt. Its columns and codes are not the
// canonical ones: `load.crosswalk.yaml` reads it. `truth.csv` lists each spoilt place: file, line, column, kind.
import { closeSync, mkdirSync, openSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';

const digits = (number: number, length: number): string => String(number).padStart(length, '0');
const numbered = (count: number, prefix: string, length: number): readonly string[] =>
  Array.from({ length: count }, (_, index) => prefix + digits(index + 1, length));

const stations = numbered(60, 'ST', 3);
const waters = numbered(400, 'WB', 4);
const words = (text: string): readonly string[] => text.split(' ');
const kinds = words('motorboat sailboat pwc canoe kayak pontoon houseboat wakeboat rowboat barge');
const propulsions = words('outboard inboard sterndrive jet none electric');
const hulls = words('aluminum fiberglass wood steel inflatable plastic');
const regions = words(
  'AL AK AZ AR CA CO CT DE FL GA HI ID IL IN IA KS KY LA ME MD MA MI MN MS MO MT NE NV NH NJ NM NY NC ND OH OK OR PA RI SC SD TN TX UT VT VA WA WV WI WY BC AB SK',
);
const risks = words('low medium high');
const parts = words(
  'hull transom bilge anchor anchor_locker trailer_frame trailer_bunks trailer_axle trailer_lights livewell baitwell ballast_tank motor_lower_unit motor_intake prop trim_tabs rudder keel swim_platform ladder depth_sounder thru_hull scupper fenders lines pfd_locker water_toys fishing_gear jet_pump sea_strainer',
);
const sides = words('port starboard center na');
const found = words('mussel plant mud other');
const means = words('visual tactile canine camera');
const methods = words('hot_wash flush dry_time combined');
const badDates = ['2025-13-45T10:00:00', '31/06/2025', 'n/a', '2025-02-30T08:00:00', '2025-06-1508:00'];

const header = {
  inspections:
    'inspection_id,station,started_at,ended_at,watercraft_type,length_ft,propulsion,hull_material,home_state,previous_waterbody,days_since_launch,destination,standing_water,drained,party_size,risk,outcome,inspector,seal_no,notes\n',
  checks: 'inspection_id,component,side,checked,found,found_by\n',
  washes: 'decon_id,inspection_id,started_at,finished_at,method,temp_c,technician\n',
  truth: 'file,line,column,kind\n',
};

const start = Date.UTC(2025, 3, 1) / 1000;
const span = 183 * 86_400;
const days = Array.from({ length: 190 }, (_, day) =>
  new Date((start + day * 86_400) * 1000).toISOString().slice(0, 11),
);

function timeOf(second: number): string {
  const since = second - start;
  const day = Math.floor(since / 86_400);
  const rest = since - day * 86_400;
  const parts = [Math.floor(rest / 3600), Math.floor(rest / 60) % 60, rest % 60];
  return days[day] + parts.map((part) => digits(part, 2)).join(':');
}

/** Marsaglia's xorshift128, 32 bits a draw. */
function drawsFrom(seed: number): () => number {
  let [a, b, c, d] = [seed ^ 0x9e3779b9, (seed * 2654435761) | 0, (seed + 12345) | 0, 0x1234567 ^ seed];
  const draw = (): number => {
    let mixed = d;
    const first = a;
    [d, c, b] = [c, b, first];
    mixed ^= mixed << 11;
    mixed ^= mixed >>> 8;
    a = mixed ^ first ^ (first >>> 19);
    return a >>> 0;
  };
  for (let drawn = 0; drawn < 20; drawn++) draw();
  return draw;
}

class Lines {
  readonly #file: number;
  #text = '';
  bytes = 0;

  constructor(path: string, first: string) {
    this.#file = openSync(path, 'w');
    this.write(first);
  }

  write(text: string): void {
    this.#text += text;
    if (this.#text.length > 1 << 20) this.#flush();
  }

  close(): void {
    this.#flush();
    closeSync(this.#file);
  }

  #flush(): void {
    this.bytes += writeSync(this.#file, this.#text, null, 'latin1');
    this.#text = '';
  }
}

/** Writes that many inspections with their checks and washes into a folder; says how many bytes and rows there are. */
export function writeLoad(count: number, folder: string, seed: number): { readonly bytes: number; rows: number } {
  mkdirSync(folder, { recursive: true });
  const draw = drawsFrom(seed | 0);
  const share = (): number => draw() / 4294967296;
  const below = (limit: number): number => draw() % limit;
  const oneOf = <T>(list: readonly T[]): T => list[below(list.length)]!;
  const table = (name: string, lines: readonly string[]) =>
    writeFileSync(join(folder, name), `${lines.join('\n')}\n`, 'latin1');
  const place = (from: number, step: number, index: number) => (from + index / step).toFixed(4);
  table('stations.csv', [
    'station,name,lat,lon',
    ...stations.map((name, at) => `${name},Station ${at + 1},${place(44, 20, at)},${place(-116, 30, at)}`),
  ]);
  table('waterbodies.csv', [
    'waterbody,name,state,infested',
    ...waters.map((name, at) => `${name},Lake ${at + 1},${regions[at % regions.length]},${at % 7 === 0 ? 'Y' : 'N'}`),
  ]);
  const inspections = new Lines(join(folder, 'inspections.csv'), header.inspections);
  const checks = new Lines(join(folder, 'component_checks.csv'), header.checks);
  const washes = new Lines(join(folder, 'decontaminations.csv'), header.washes);
  const truth = new Lines(join(folder, 'truth.csv'), header.truth);
  let inspectionLine = 1;
  let checkLine = 1;
  let washLine = 1;
  const key = (number: number): string => `I${digits(number, 9)}`;
  const unknownKey = (): string => `I9${digits(below(99_999_999), 8)}`;
  const spoilt = (file: string, line: number, column: string, kind: string): void =>
    truth.write(`${file},${line},${column},${kind}\n`);

  for (let number = 1; number <= count; number++) {
    const began = start + below(span);
    const lasted = 120 + below(3600);
    const kind = below(10);
    const station = oneOf(stations);
    const infested = share() < 0.25;
    const fouled = share() < (infested ? 0.06 : 0.015);
    const outcome = fouled
      ? share() < 0.6
        ? 'decon_required'
        : 'quarantine'
      : share() < 0.95
        ? 'cleared'
        : share() < 0.8
          ? 'cleared_cleaned'
          : 'refused';
    let cells = [
      key(number),
      station,
      timeOf(began),
      timeOf(began + lasted),
      kinds[kind]!,
      (8 + below(520) / 10).toFixed(1),
      oneOf(propulsions),
      oneOf(hulls),
      oneOf(regions),
      share() < 0.15 ? '' : oneOf(waters),
      share() < 0.15 ? '' : String(below(365)),
      oneOf(waters),
      share() < 0.1 ? 'Y' : 'N',
      share() < 0.8 ? 'Y' : 'N',
      String(1 + below(8)),
      oneOf(risks),
      outcome,
      `INSP${digits(below(300), 3)}`,
      share() < 0.3 ? `S${draw()}` : '',
      '',
    ];
    const noted = share();
    const isLong = noted < 0.003;
    if (isLong) cells[19] = '"line one\nline two, with comma"';
    else if (noted < 0.03) cells[19] = '"owner said ""clean"", dry"';
    else if (noted < 0.15) cells[19] = 'routine check';
    const line = inspectionLine + 1;
    inspectionLine += isLong ? 2 : 1;
    if (share() < 0.04) {
      const spoil = (position: number, column: string, kindOfSlip: string, text: string): void => {
        cells[position] = text;
        spoilt('inspections.csv', line, column, kindOfSlip);
      };
      switch (below(14)) {
        case 0:
          spoil(2, 'started_at', 'bad_type', oneOf(badDates));
          break;
        case 1:
          spoil(3, 'ended_at', 'bad_type', oneOf(badDates));
          break;
        case 2: {
          const earlier = timeOf(Math.max(start, began - 3600 - below(7200)));
          if (earlier < cells[2]!) spoil(3, 'ended_at', 'order', earlier);
          else spoil(3, 'ended_at', 'bad_type', badDates[0]!);
          break;
        }
        case 3:
          spoil(4, 'watercraft_type', 'bad_enum', oneOf(['moterboat', 'Unknown', '99']));
          break;
        case 4:
          spoil(5, 'length_ft', 'bad_type', oneOf(['22 ft', 'abc', '1O.5', "16'"]));
          break;
        case 5:
          spoil(5, 'length_ft', 'range', oneOf(['-5.0', '0.0', '900.0']));
          break;
        case 6:
          spoil(8, 'home_state', 'bad_enum', 'ZZ');
          break;
        case 7:
          spoil(9, 'previous_waterbody', 'fk', `WB9${digits(below(100), 2)}9`);
          break;
        case 8:
          spoil(1, 'station', 'fk', `ST9${digits(below(100), 2)}`);
          break;
        case 9:
          spoil(12, 'standing_water', 'bad_enum', oneOf(['maybe', '1', '']));
          break;
        case 10:
          spoil(16, 'outcome', 'bad_enum', oneOf(['', 'CLEARED?', 'pending']));
          break;
        case 11:
          if (number > 10) {
            const earlier = Math.max(1, number - 1 - below(Math.min(number - 1, 5000)));
            spoil(0, 'inspection_id', 'duplicate', key(earlier));
          }
          break;
        case 12:
          if (isLong) break;
          cells = cells.slice(0, 10 + below(8));
          spoilt('inspections.csv', line, '', 'ragged_short');
          break;
        default:
          if (isLong) break;
          cells.push('x', 'y');
          spoilt('inspections.csv', line, '', 'ragged_long');
      }
    }
    inspections.write(`${cells.join(',')}\n`);

    const looks = 4 + below(9);
    const firstPart = below(30);
    for (let look = 0; look < looks; look++) {
      const part = (firstPart + look * 7) % 30;
      const isChecked = share() < 0.93;
      const isFound = isChecked && fouled && share() < 0.25;
      const row = [
        key(number),
        parts[part]!,
        sides[part < 6 ? below(3) : 3]!,
        isChecked ? 'Y' : 'N',
        isFound ? oneOf(found) : '',
        isFound ? oneOf(means) : '',
      ];
      checkLine++;
      if (share() < 0.012) {
        const spoil = (position: number, column: string, kindOfSlip: string, text: string): void => {
          row[position] = text;
          spoilt('component_checks.csv', checkLine, column, kindOfSlip);
        };
        switch (below(7)) {
          case 0:
            spoil(0, 'inspection_id', 'fk', unknownKey());
            break;
          case 1:
            spoil(1, 'component', 'bad_enum', 'huull');
            break;
          case 2:
            spoil(2, 'side', 'bad_enum', 'left');
            break;
          case 3:
            spoil(3, 'checked', 'bad_enum', 'yes?');
            break;
          case 4:
            row[5] = 'visual';
            spoil(4, 'found', 'bad_enum', 'zebra?');
            break;
          case 5:
            row.length = 3;
            spoilt('component_checks.csv', checkLine, '', 'ragged_short');
            break;
          default:
            row.push('zz');
            spoilt('component_checks.csv', checkLine, '', 'ragged_long');
        }
      }
      checks.write(`${row.join(',')}\n`);
    }

    if (fouled || share() < 0.005) {
      washLine++;
      const last = start + 189 * 86_400;
      const from = began + lasted + below(86_400);
      const to = from + 600 + below(7200);
      const row = [
        `D${digits(washLine - 1, 8)}`,
        key(number),
        timeOf(Math.min(from, last)),
        timeOf(Math.min(to, last)),
        oneOf(methods),
        (45 + below(200) / 10).toFixed(1),
        `TECH${digits(below(60), 2)}`,
      ];
      if (share() < 0.014) {
        const slips = [
          [1, 'inspection_id', 'fk', unknownKey],
          [2, 'started_at', 'bad_type', () => 'soon'],
          [4, 'method', 'bad_enum', () => 'magic'],
          [5, 'temp_c', 'bad_type', () => 'hot'],
        ] as const;
        const [position, column, kindOfSlip, text] = oneOf(slips);
        row[position] = text();
        spoilt('decontaminations.csv', washLine, column, kindOfSlip);
      }
      washes.write(`${row.join(',')}\n`);
    }
  }
  for (const file of [inspections, checks, washes, truth]) file.close();
  return { bytes: inspections.bytes + checks.bytes + washes.bytes, rows: count + checkLine + washLine - 2 };
}
