import type { TableName } from '../../record/field.js';
import { frenchFields } from './french-words.js';
import { wordsOf } from './heading.js';

type Phrases = Readonly<Record<string, string>>;

/** What forms and exports commonly call the fields of each table, beside the field's own name; common practice, no source. */
const spoken: Readonly<Record<TableName, Phrases>> = {
  stations: {
    station: 'site, stn, id, code, station id, site id, station code, location',
    name: 'label, station name, site name, title',
    setting: 'kind, type, site type, station type',
    waterbody: 'lake, water, water name, reservoir',
    lanes: 'lanes, lane count',
    time_zone: 'zone, tz, timezone',
    season_opens: 'opens, from, season start, season from, opening',
    season_closes: 'closes, to, season end, season to, closing',
  },
  station_days: {
    station: 'site, stn, location, station id, cost centre, cost center',
    date: 'day, on, calendar date',
    state: 'status, st, open, open or closed, day status',
    opened_at: 'opened, from, open from, opening time, start, begin',
    closed_at: 'closed, till, until, to, closing time, end, finish',
    staff_hours: 'hours, h, hrs, hours worked, labor hours, person hours',
    staff_cost: 'pay, wage, wages, payroll, labor cost, cost, gross pay',
    bypasses: 'bypass, passed, drive by, drove past, missed',
  },
  waterbodies: {
    waterbody: 'water, id, code, water id, lake id, lake',
    name: 'label, water name, lake name, title',
    region: 'state, province, county',
    status: 'classification, infested, infestation',
    status_from: 'since, from, status date, as of, effective',
  },
  inspections: {
    inspection: 'inspection id, insp, insp id, form, form no, form number, inspection number, record id, id',
    station: 'site, stn, location, station id, ramp, inspection site',
    started_at: 'start, started, begin, start time, time in, in, inspection time, date time, timestamp, arrived',
    finished_at: 'finish, end, ended, end time, time out, out, stop, completed',
    direction: 'heading, way, in or out, entering leaving, bound, travel direction',
    extent: 'look, inspection kind, inspection type, inspection level, level',
    watercraft_type: 'watercraft, craft, craft kind, craft type, vessel type, boat type, kind, type, vessel kind',
    propulsion: 'moved by, power, powered by, propelled by',
    drive: 'engine, engine drive, drive type, motor, motor type, engine type',
    hull_material: 'hull, material, hull type',
    length_ft: 'length, len, feet, boat length, vessel length, loa',
    antifouling_paint: 'paint, antifouling, bottom paint, coat, coating',
    hauled_by: 'towed by, tow, haul, hauler, transport, transported by',
    craft: 'hull no, hin, hull id, hull number, hull identification, vessel id, boat id',
    home_region: 'home, home state, state, home province, reg, registered in, registration state, region',
    last_waterbody: 'last water, from, coming from, previous water, previous waterbody, origin, last lake',
    last_on_water: 'last out, last used, last launch, last date, last trip, date last used, last in water',
    moored: 'moored, mooring, slip, berth, stored in water',
    next_waterbody: 'next water, to, going to, destination, next lake, bound for',
    standing_water: 'wet, water, water found, water on board, undrained water',
    vegetation: 'weed, weeds, plants, plant material',
    risk: 'risk level, risk class, risk rating',
    outcome: 'result, disposition, decision, action',
    inspector: 'staff, crew, officer, inspected by, inspector name, technician',
  },
  checks: {
    inspection: 'inspection id, insp, insp id, form, form no, inspection number',
    component: 'part, area, item, location, place',
    side: 'side of craft, port starboard',
    state: 'status, condition, checked, seen',
    finding: 'found, what found, what, type found',
    stage: 'life stage, mussel stage',
    abundance: 'amount, how many, number, density, quantity',
    viability: 'alive, alive or dead, live',
    found_by: 'by, method, how found, found how',
  },
  rechecks: {
    inspection: 'inspection id, insp, insp id, form, form no, inspection number',
    component: 'part, area, item, location, place',
    side: 'side of craft, port starboard',
    state: 'status, condition, checked, seen',
    finding: 'found, what found, what, type found',
    stage: 'life stage, mussel stage',
    abundance: 'amount, how many, number, density, quantity',
    viability: 'alive, alive or dead, live',
    found_by: 'by, method, how found, found how',
    rechecked_at: 'again at, second look at, recheck time, rechecked, time, start',
    inspector: 'second staff, second inspector, rechecked by, staff, crew',
  },
  decontaminations: {
    wash: 'wash no, wash id, wash number, decon, decon id, decontamination id, nr, no, number, id',
    inspection: 'inspection id, insp, insp id, form, form no, inspection number',
    reason: 'why, cause, ordered for',
    ordered_at: 'ordered, asked, requested, order time, called',
    started_at: 'start, started, begin, began, begun, start time',
    finished_at: 'finish, end, ended, done, end time, completed',
    released_at: 'released, let go, release time, free, freed, left',
    ending: 'end kind, how ended, end, disposition',
    method: 'how, wash method, kind, type',
    unit: 'wash unit, decon unit, equipment',
    contact_temp_f: 'contact temperature, contact, temperature, temp, t contact',
    nozzle_temp_f: 'nozzle temperature, nozzle, t nozzle',
    stand_off_ft: 'standoff, distance, dist, nozzle distance',
    contact_seconds: 'contact time, seconds, sec, contact s, dwell',
    flush_minutes: 'flush min, flush time, flush',
    flush_exit_temp_f: 'flush exit, exit temperature, flush temperature, t flush',
    effluent: 'water to, waste water, runoff, drain to, disposal',
    recheck_result: 'recheck, looked again, after, passed, check after',
  },
  wash_units: {
    unit: 'unit id, id, code, wash unit',
    kind: 'type, unit type',
    station: 'site, stn, location',
    capital_cost: 'cost, price, purchase cost, purchase price',
    in_service_on: 'in service, in service since, bought, purchased, service date',
    expected_life: 'life, life years, years, lifetime',
    running_cost: 'cost per wash, cost a wash, operating cost',
  },
  spending: {
    entry: 'id, ref, reference, entry no, number, ledger no, record, voucher, voucher no, document no',
    fiscal_year: 'fy, year, fiscal',
    category: 'account, type, object, class, kind',
    station: 'site, place, location, stn, cost centre, cost center',
    fund: 'source, funding, grant',
    amount: 'dollars, cost, total, value',
    note: 'memo, comment, description, for what',
  },
};

/** The phrases by which a heading may name a field, each in words; the field's own name first, its unit left off. */
export function phrasesOf(table: TableName, field: string): readonly (readonly string[])[] {
  const own = field.replace(/_(?:ft|f|at|on)$/u, '');
  const common = spoken[table][field]?.split(', ') ?? [];
  const french = frenchFields[table]?.[field]?.split(', ') ?? [];
  return [field, own, ...common, ...french].map(wordsOf);
}

/** Words in the names of files that tell what they hold. */
export const fileWords: Readonly<Record<TableName, readonly string[]>> = {
  stations: ['station', 'site', 'location'],
  station_days: ['day', 'calendar', 'daily', 'opening'],
  waterbodies: ['water', 'waterbody', 'waterbodies', 'lake'],
  inspections: ['inspection', 'form', 'visit'],
  checks: ['check', 'component', 'part', 'checklist'],
  rechecks: ['recheck', 'second', 'blind'],
  decontaminations: ['wash', 'washes', 'decon', 'decontamination'],
  wash_units: ['unit', 'equipment'],
  spending: ['spending', 'expense', 'cost', 'ledger', 'budget'],
};
