-- The parts of a craft: what the exports call them, and which craft are built to carry them.

-- The catalogue of parts that the basin's forms ask of, with its order, sides, whether a plain look misses the part, and the
-- types and drives that carry it (null: any). As in src/record/components.ts, which is common practice, no source.
create table catalogue as
with kinds as (
  select ['auxiliary sail', 'cabin motorboat', 'houseboat', 'inflatable boat', 'open motorboat', 'pontoon boat'] as powered,
    ['cabin motorboat', 'houseboat', 'open motorboat', 'pontoon boat'] as motorboats, ['cabin motorboat', 'open motorboat'] as planing,
    ['auxiliary sail', 'sail only'] as sailing, ['personal watercraft'] as jets
), listed as (
  select unnest([
    {part: 'hull below waterline', tablet: 'HULL', area: 'exterior', hidden: false, types: null, drives: null},
    {part: 'through-hull fittings', tablet: 'THRU', area: 'exterior', hidden: true,
      types: planing || ['auxiliary sail', 'houseboat', 'pontoon boat'], drives: null},
    {part: 'transom', tablet: 'TRANSOM', area: 'exterior', hidden: false, types: powered || jets || ['sail only', 'rowboat'], drives: null},
    {part: 'trim tabs and rams', tablet: 'TABS', area: 'exterior', hidden: true, types: planing, drives: null},
    {part: 'transducer', tablet: 'DUCER', area: 'exterior', hidden: true, types: motorboats, drives: null},
    {part: 'swim platform', tablet: 'SWIMPLAT', area: 'exterior', hidden: true, types: motorboats, drives: null},
    {part: 'rudder', tablet: 'RUDDER', area: 'exterior', hidden: false, types: sailing || ['cabin motorboat'],
      drives: ['inboard', 'outboard', 'other']},
    {part: 'centreboard', tablet: 'CBOARD', area: 'exterior', hidden: true, types: sailing, drives: null},
    {part: 'outdrive lower unit', tablet: 'OUTDRV', area: 'propulsion', hidden: false, types: motorboats, drives: ['sterndrive']},
    {part: 'cavitation plate', tablet: 'CAVPL', area: 'propulsion', hidden: false, types: powered, drives: ['sterndrive', 'outboard']},
    {part: 'hydraulic rams', tablet: 'RAMS', area: 'propulsion', hidden: false, types: motorboats, drives: ['sterndrive']},
    {part: 'gimbal area', tablet: 'GIMBAL', area: 'propulsion', hidden: true, types: motorboats, drives: ['sterndrive']},
    {part: 'outboard lower unit', tablet: 'OBLEG', area: 'propulsion', hidden: false, types: powered, drives: ['outboard']},
    {part: 'propeller', tablet: 'PROP', area: 'propulsion', hidden: false, types: powered,
      drives: ['inboard', 'outboard', 'pod drive', 'sterndrive']},
    {part: 'prop shafts', tablet: 'SHAFT', area: 'propulsion', hidden: false, types: motorboats || ['auxiliary sail'],
      drives: ['inboard', 'pod drive']},
    {part: 'jet intake', tablet: 'JET', area: 'propulsion', hidden: true, types: planing || jets, drives: ['inboard', 'other']},
    {part: 'bilge', tablet: 'BILGE', area: 'water-holding', hidden: true, types: powered || jets, drives: null},
    {part: 'live well', tablet: 'LIVEW', area: 'water-holding', hidden: false, types: planing || ['pontoon boat'], drives: null},
    {part: 'ballast tank', tablet: 'BALLAST', area: 'water-holding', hidden: true, types: planing, drives: ['inboard', 'sterndrive']},
    {part: 'anchor line', tablet: 'ANCHLN', area: 'equipment', hidden: false, types: powered || ['sail only'], drives: null},
    {part: 'bunks', tablet: 'BUNK', area: 'trailer', hidden: false, types: powered || jets || ['sail only', 'rowboat'], drives: null},
    {part: 'rollers', tablet: 'ROLLER', area: 'trailer', hidden: false, types: powered || jets || ['sail only', 'rowboat'], drives: null},
    {part: 'tube openings', tablet: 'TUBE', area: 'trailer', hidden: true, types: powered || jets || ['sail only', 'rowboat'], drives: null}
  ]) as entry from kinds
)
select row_number() over () as place, unnest(entry) from listed;

-- A type or drive that nobody recorded, and the type other, rule no part out; a personal watercraft may have any drive.
create macro may_carry(types, drives, watercraft_type, drive) as
  (types is null or watercraft_type is null or watercraft_type = 'other' or list_contains(types, watercraft_type))
  and (drives is null or watercraft_type = 'personal watercraft' or drive is null or list_contains(drives, drive));

-- The columns of the road forms, in their order, and the part and side that each is of.
create table road_columns as
select row_number() over () as nth, split_part(listed, '/', 1) as part, split_part(listed, '/', 2) as side
from (select unnest(['hull below waterline/port', 'hull below waterline/starboard', 'through-hull fittings/port',
  'through-hull fittings/starboard', 'transom/none', 'trim tabs and rams/port', 'trim tabs and rams/starboard', 'transducer/none',
  'swim platform/none', 'rudder/none', 'centreboard/none', 'outdrive lower unit/none', 'hydraulic rams/port',
  'hydraulic rams/starboard', 'gimbal area/none', 'outboard lower unit/none', 'cavitation plate/none', 'propeller/none',
  'prop shafts/none', 'jet intake/none', 'bilge/none', 'live well/none', 'ballast tank/none', 'anchor line/none', 'bunks/port',
  'bunks/starboard', 'rollers/none', 'tube openings/port', 'tube openings/starboard']) as listed);

create macro lake_side(cell) as case cell when 'P' then 'port' when 'S' then 'starboard' when '-' then 'none' end;
create macro lake_state(cell) as
  case cell when 'A' then 'absent' when 'NC' then 'not checked' when 'OK' then 'clean' when 'F' then 'fouled' end;
create macro lake_found(cell) as map {'MUS': 'mussels', 'VEG': 'vegetation', 'MUD': 'mud', 'WAT': 'standing water'}[cell];
create macro lake_means(cell) as map {'SIGHT': 'sight', 'FEEL': 'feel', 'MIRROR': 'mirror', 'LIGHT': 'light',
  'MAGNIFIER': 'magnifier', 'CAMERA': 'camera'}[cell];

-- A cell of a road form: blank is not checked, 0 clean, - absent; V, D and W are plants, mud and water. Mussels are a letter for
-- the stage, a digit for how many, and a letter for how they were found: M attached by any means, S settlers by feel.
create macro road_state(cell) as case
  when cell = '' then 'not checked' when cell = '0' then 'clean' when cell = '-' then 'absent'
  when regexp_full_match(cell, 'V|D|W|M[1-4][sfmlgc]|S[1-4]f') then 'fouled' end;
create macro road_found(cell) as map {'V': 'vegetation', 'D': 'mud', 'W': 'standing water', 'M': 'mussels', 'S': 'mussels'}[cell[1]];
create macro road_means(cell) as if(cell in ('V', 'D', 'W'), 'sight', map {'s': 'sight', 'f': 'feel', 'm': 'mirror', 'l': 'light',
  'g': 'magnifier', 'c': 'camera'}[cell[3]]);
