-- Looks at the parts: one row of a lake table each, or one cell of a road form; first and second looks alike.

create table road_looks as
select forms.id, catalogue.place, side, cell, types, drives, road_state(cell) as state,
  if(road_state(cell) = 'fouled', road_found(cell), null) as found,
  cell[1] = 'M' as is_attached, cell[2] = '1' as is_trace, if(road_state(cell) = 'fouled', road_means(cell), null) as means
from (select id, unnest(parts) as cell, unnest(range(1, 30)) as nth from road_forms) as forms
join road_columns using (nth) join catalogue using (part);

-- A cell that stands for nothing, or a part that the craft is not built to carry and was looked at, sets the whole form aside.
insert into faults select id, 'unknown-code' from road_looks where state is null;
insert into faults
select id, 'impossible-part' from road_looks
join (select id, watercraft_type, drive from inspections) using (id)
where state in ('clean', 'fouled') and not may_carry(types, drives, watercraft_type, drive);

-- An inspection whose number an earlier one has. What was set aside for a fault of its own is no earlier one.
insert into faults
select id, 'duplicate-key' from (
  select id, row_number() over (partition by key order by id) as place from inspections where id not in (select id from faults)
) where place > 1;

-- The same form entered twice under two numbers: alike in station, craft and start. The first is kept. A form without a hull
-- number is like no other.
insert into faults
select id, 'double-entry' from (
  select id, row_number() over (partition by station, craft, started order by id) as place
  from inspections where craft is not null and id not in (select id from faults)
) where place > 1;

create table kept_inspections as select * from inspections where id not in (select id from faults);

-- The numbers of inspections that were read but not kept: from the first cell, where the rest of the row could not be read.
create table lost_keys as
select distinct cells[1] as key from rows
where (file like 'lakes/inspections-%' or file like 'roads/forms-%') and cells[1] not in (select key from kept_inspections);

create table lake_looks as
with named as (
  select id, if(file like 'lakes/rechecks-%', 'second', 'first') as turn, lake_cell(cells[1]) as key, lake_cell(cells[2]) as part_cell,
    lake_cell(cells[3]) as side_cell, lake_cell(cells[4]) as state_cell, lake_cell(cells[5]) as found_cell,
    lake_cell(cells[6]) as stage_cell, lake_cell(cells[7]) as amount_cell, lake_cell(cells[8]) as alive_cell,
    lake_cell(cells[9]) as means_cell, lake_cell(cells[10]) as again_cell
  from whole where file like 'lakes/component-checks-%' or file like 'lakes/rechecks-%'
)
select named.*, inspection, place, coalesce(may_carry(types, drives, watercraft_type, drive), true) as is_possible,
  lake_side(side_cell) as side, lake_state(state_cell) as state, lake_found(found_cell) as found, stage_cell = 'ATT' as is_attached,
  amount_cell = '1' as is_trace, lake_means(means_cell) as means
from named left join catalogue on tablet = part_cell
left join (select key, id as inspection, watercraft_type, drive from kept_inspections) using (key);

insert into faults
select id, 'missing-value' from (select id, unnest([key, part_cell, side_cell, state_cell]) as cell from lake_looks) where cell is null;
insert into faults
select id, 'unknown-code' from (
  select id, unnest([part_cell is not null and place is null, side_cell is not null and side is null,
    state_cell is not null and state is null, found_cell is not null and found is null, stage_cell not in ('ATT', 'SET'),
    amount_cell not in ('1', '2', '3', '4'), alive_cell not in ('L', 'D', 'U'), means_cell is not null and means is null]) as is_unknown
  from lake_looks
) where is_unknown;
insert into faults
select id, code from (
  select id, moment_fault(again_cell, lake_day(again_cell[:10]), lake_moment(again_cell)) as code from lake_looks where turn = 'second'
) where code is not null;

-- Looks follow their inspection: set aside with it, and at fault where no inspection has their number.
insert into faults
select id, if(key in (select key from lost_keys), 'parent-set-aside', 'unknown-reference') from lake_looks
where key is not null and inspection is null;
insert into faults
select id, 'impossible-part' from lake_looks where inspection is not null and state in ('clean', 'fouled') and not is_possible;
insert into faults
select id, 'duplicate-key' from (
  select id, row_number() over (partition by inspection, turn, place, side order by id) as nth
  from lake_looks where id not in (select id from faults)
) where nth > 1;

-- The looks that are kept.
create table looks as
select inspection, turn, place, side, state, found, is_attached, is_trace, means
from lake_looks where id not in (select id from faults) union all by name
select id as inspection, 'first' as turn, place, side, state, found, is_attached, is_trace, means
from road_looks where id not in (select id from faults);
