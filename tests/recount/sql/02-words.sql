-- The words of the crosswalks: which text of an export stands for which code. A text that is none of these is an unknown code.

-- `missing` of each crosswalk: the lake tablets also write NA; the roads and the office leave the cell blank.
create macro lake_cell(cell) as if(cell in ('', 'NA'), null, cell);
create macro road_cell(cell) as nullif(cell, '');

create macro lake_station(cell) as map {'L1': 'alder-landing', 'L2': 'heron-point', 'L3': 'quill-marina', 'L4': 'tamsel-ramp',
  'L5': 'fennick-dam', 'L6': 'old-ferry', 'L7': 'hollin-beach'}[cell];
create macro road_station(cell) as map {'21': 'stag-pass', '22': 'mill-junction', '31': 'north-gate', '32': 'south-gate'}[cell];
create table stations as
select * from (values ('alder-landing', 'Alder Landing'), ('heron-point', 'Heron Point'), ('quill-marina', 'Quill Marina'),
  ('tamsel-ramp', 'Tamsel Ramp'), ('fennick-dam', 'Fennick Dam'), ('old-ferry', 'Old Ferry'), ('hollin-beach', 'Hollin Beach'),
  ('stag-pass', 'Stag Pass'), ('mill-junction', 'Mill Junction'), ('north-gate', 'North Gate'), ('south-gate', 'South Gate')
) as listed (station, name);

create macro lake_direction(cell) as map {'IN': 'arriving', 'OUT': 'leaving'}[cell];
create macro road_direction(cell) as map {'1': 'arriving', '2': 'roadside'}[cell];
create macro lake_extent(cell) as map {'F': 'full', 'P': 'paper check'}[cell];
create macro road_extent(cell) as map {'1': 'full', '2': 'paper check'}[cell];
create macro lake_type(cell) as map {'OPEN': 'open motorboat', 'CABIN': 'cabin motorboat', 'PONT': 'pontoon boat',
  'HOUSE': 'houseboat', 'PWC': 'personal watercraft', 'SAILAUX': 'auxiliary sail', 'SAIL': 'sail only', 'INFL': 'inflatable boat',
  'ROW': 'rowboat', 'PADDLE': 'paddlecraft', 'OTH': 'other'}[cell];
create macro road_type(cell) as map {'1': 'open motorboat', '2': 'cabin motorboat', '3': 'pontoon boat', '4': 'houseboat',
  '5': 'personal watercraft', '6': 'auxiliary sail', '7': 'sail only', '8': 'inflatable boat', '9': 'rowboat',
  '10': 'paddlecraft', '99': 'other'}[cell];
create macro lake_drive(cell) as map {'OB': 'outboard', 'SD': 'sterndrive', 'IB': 'inboard', 'POD': 'pod drive'}[cell];
create macro road_drive(cell) as map {'out': 'outboard', 'stern': 'sterndrive', 'in': 'inboard', 'pod': 'pod drive'}[cell];
create macro lake_risk(cell) as map {'L': 'low', 'M': 'medium', 'H': 'high'}[cell];
create macro road_risk(cell) as map {'A': 'low', 'B': 'medium', 'C': 'high'}[cell];

-- Codes that changed their meaning. Damp (D, 2) was no standing water until 2024. W was wiped down on site until 2024 and is
-- washed since; D was washed until 2024 and is no code since; K is cleaned on site since 2025 and was none before.
create macro lake_water(cell, season) as
  if(cell = 'D', if(season >= 2025, 'yes', 'no'), map {'Y': 'yes', 'N': 'no'}[cell]);
create macro road_water(cell, season) as
  if(cell = '2', if(season >= 2025, 'yes', 'no'), map {'1': 'yes', '0': 'no'}[cell]);
create macro lake_outcome(cell, season) as case
  when cell = 'W' and season >= 2025 or cell = 'D' and season < 2025 then 'washed as a precaution'
  when cell = 'W' and season < 2025 or cell = 'K' and season >= 2025 then 'cleaned on site'
  else map {'C': 'cleared', 'X': 'intercepted', 'H': 'held to dry', 'R': 'refused', 'T': 'turned away'}[cell] end;
create macro road_outcome(cell) as map {'0': 'cleared', '1': 'cleaned on site', '2': 'washed as a precaution', '3': 'intercepted',
  '4': 'held to dry', '5': 'refused', '6': 'turned away'}[cell];

create macro yes_or_no(cell) as cell in ('Y', 'N');
create macro one_or_zero(cell) as cell in ('1', '0');

create macro road_water_name(cell) as map {'101': 'marrowby-lake', '102': 'quillwater-lake', '103': 'tamsel-lake',
  '104': 'upper-fennick', '105': 'lower-fennick', '106': 'hollin-lake', '107': 'cindermere', '108': 'paleham-pool',
  '201': 'great-sallow', '202': 'dunmark-canal', '203': 'northreach-sound', '204': 'westdown-lake', '299': 'other-water'}[cell];

create macro lake_reason(cell) as map {'MUS': 'mussels', 'WAT': 'standing water', 'VEG': 'plants', 'BAL': 'ballast',
  'EXIT': 'leaving a positive water', 'OWN': 'owner request'}[cell];
create macro road_reason(cell) as map {'1': 'mussels', '2': 'standing water', '3': 'plants', '4': 'ballast',
  '5': 'leaving a positive water', '6': 'owner request'}[cell];
create macro lake_ending(cell) as map {'GO': 'released', 'LEFT': 'left unwashed'}[cell];
create macro road_ending(cell) as map {'1': 'released', '2': 'left unwashed'}[cell];
create macro lake_day_state(cell) as map {'O': 'open', 'C': 'closed', '?': 'not recorded'}[cell];
create macro road_day_state(cell) as map {'1': 'open', '0': 'closed', '9': 'not recorded'}[cell];
create macro spent_on(cell) as map {'PERS': 'personnel', 'TRAV': 'travel', 'EQUIP': 'equipment', 'SUPP': 'supplies',
  'CONTR': 'contracts', 'TRAIN': 'training', 'INDIR': 'indirect'}[cell];
