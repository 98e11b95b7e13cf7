-- Station days, washes and spending, and what sets a row of them aside.

create table all_days as
with named as (
  select id, 7 as behind, lake_cell(cells[1]) as station_cell, lake_station(lake_cell(cells[1])) as station,
    lake_cell(cells[2]) as day_cell, lake_day(lake_cell(cells[2])) as day, lake_cell(cells[3]) as state_cell,
    lake_day_state(lake_cell(cells[3])) as state, lake_cell(cells[4]) as opened_cell, lake_moment(lake_cell(cells[4])) as opened,
    lake_day(lake_cell(cells[4])[:10]) as opened_day, lake_cell(cells[5]) as closed_cell, lake_moment(lake_cell(cells[5])) as closed,
    lake_day(lake_cell(cells[5])[:10]) as closed_day, lake_cell(cells[6]) as hours_cell, written_number(lake_cell(cells[6])) as hours,
    lake_cell(cells[7]) as pay_cell, written_number(lake_cell(cells[7])) as pay, lake_cell(cells[8]) as passed_cell
  from whole where file like 'lakes/station-days-%' union all
  select id, 8, road_cell(cells[1]), road_station(road_cell(cells[1])), road_cell(cells[2]), road_day(road_cell(cells[2])),
    road_cell(cells[3]), road_day_state(road_cell(cells[3])), road_cell(cells[4]), road_moment(road_cell(cells[4])),
    road_day(road_cell(cells[4])[:10]), road_cell(cells[5]), road_moment(road_cell(cells[5])), road_day(road_cell(cells[5])[:10]),
    road_cell(cells[6]), comma_number(road_cell(cells[6])), road_cell(cells[7]), comma_number(road_cell(cells[7])), road_cell(cells[8])
  from whole where file like 'roads/days-%'
)
select *, year(day) as season from named;
insert into faults
select id, 'missing-value' from (select id, unnest([station_cell, day_cell, state_cell]) as cell from all_days) where cell is null;
insert into faults
select id, 'unknown-code' from all_days
where station_cell is not null and station is null or state_cell is not null and state is null;
-- Staff hours of a day are 0 to 500, its pay 0 to 50,000 dollars, and craft counted passing 0 to 10,000.
insert into faults
select id, code from (
  select id, unnest([if(day_cell is not null and day is null, 'not-a-date', null), moment_fault(opened_cell, opened_day, opened),
    moment_fault(closed_cell, closed_day, closed), number_fault(hours_cell, hours, 0, 500), number_fault(pay_cell, pay, 0, 50000),
    number_fault(passed_cell, written_number(passed_cell), 0, 10000),
    if(known_moment(closed) < known_moment(opened), 'wrong-order', null)]) as code from all_days
) where code is not null;
insert into faults
select id, 'duplicate-key' from (
  select id, row_number() over (partition by station, day order by id) as place from all_days where id not in (select id from faults)
) where place > 1;
create table days as select * from all_days where id not in (select id from faults);

create table all_washes as
with named as (
  select id, 7 as behind, lake_cell(cells[1]) as number, lake_cell(cells[2]) as key, lake_cell(cells[3]) as why,
    lake_reason(lake_cell(cells[3])) as reason,
    [lake_cell(cells[4]), lake_cell(cells[5]), lake_cell(cells[6]), lake_cell(cells[7])] as cells_of,
    lake_cell(cells[8]) as end_cell, lake_ending(lake_cell(cells[8])) as ending,
    lake_cell(cells[9]) not in ('SPR', 'FLU', 'S+F', 'HAND') or lake_cell(cells[17]) not in ('CON', 'REC', 'EVA', 'OTH')
      or lake_cell(cells[18]) not in ('OK', 'BAD', 'NO') as is_unknown,
    lake_cell(cells[10]) as unit, [lake_cell(cell) for cell in cells[11:16]] as measured, 0 as freezing, 1 as foot
  from whole where file like 'lakes/washes-%' union all
  select id, 8, road_cell(cells[1]), road_cell(cells[2]), road_cell(cells[3]), road_reason(road_cell(cells[3])),
    [road_cell(cells[4]), road_cell(cells[5]), road_cell(cells[6]), road_cell(cells[7])], road_cell(cells[8]),
    road_ending(road_cell(cells[8])), road_cell(cells[9]) not in ('H', 'F', 'HF', 'M')
      or road_cell(cells[17]) not in ('pad', 'loop', 'air', 'oth') or road_cell(cells[18]) not in ('+', '-', '0'),
    road_cell(cells[10]), [road_cell(cell) for cell in cells[11:16]], 0, 0.3048
  from whole where file like 'roads/washes-%'
)
select *, [if(behind = 7, lake_moment(cell), road_moment(cell)) for cell in cells_of] as moments,
  [if(behind = 7, written_number(cell), comma_number(cell)) for cell in measured] as numbers
from named;
insert into faults
select id, 'missing-value' from (select id, unnest([number, key, cells_of[1]]) as cell from all_washes) where cell is null;
insert into faults
select id, 'unknown-code' from all_washes
where why is not null and reason is null or end_cell is not null and ending is null or is_unknown;
insert into faults
select id, code from (
  select id, unnest([moment_fault(cell, if(behind = 7, lake_day(cell[:10]), road_day(cell[:10])),
    if(behind = 7, lake_moment(cell), road_moment(cell))) for cell in cells_of]) as code from all_washes
) where code is not null;
-- Water is 32 to 212 degrees Fahrenheit (the roads write Celsius), a distance 0 to 20 feet (the roads write metres), seconds 0 to
-- 3,600 and minutes of a flush 0 to 240.
insert into faults
select id, code from (
  select id, unnest([
    number_fault(measured[1], numbers[1], if(behind = 7, 32, 0), if(behind = 7, 212, 100)),
    number_fault(measured[2], numbers[2], if(behind = 7, 32, 0), if(behind = 7, 212, 100)),
    number_fault(measured[3], numbers[3], 0, 20 * foot), number_fault(measured[4], numbers[4], 0, 3600),
    number_fault(measured[5], numbers[5], 0, 240),
    number_fault(measured[6], numbers[6], if(behind = 7, 32, 0), if(behind = 7, 212, 100))]) as code from all_washes
) where code is not null;

-- Ordered, begun, ended and let go follow each other; each stage takes at most 30 days. A moment that was not recorded is
-- passed over, and the next is held against the last one that was.
create macro stage_fault(moment, before) as case
  when moment < before then 'wrong-order' when moment - before > 30 * 24 * 60 then 'over-long' end;
create table timed_washes as
select *, [minutes_utc(known_moment(moment), behind) for moment in moments] as minute_of from all_washes;
insert into faults
select id, code from (
  select id, unnest([stage_fault(minute_of[2], minute_of[1]), stage_fault(minute_of[3], coalesce(minute_of[2], minute_of[1])),
    stage_fault(minute_of[4], coalesce(minute_of[3], minute_of[2], minute_of[1]))]) as code from timed_washes
) where code is not null;
insert into faults
select id, if(key in (select key from lost_keys), 'parent-set-aside', 'unknown-reference') from timed_washes
where key not in (select key from kept_inspections);
insert into faults
select id, 'unknown-reference' from timed_washes
where unit is not null and unit not in (select cells[1] from whole where file = 'lakes/wash-units.csv');
insert into faults
select id, 'duplicate-key' from (
  select id, row_number() over (partition by number order by id) as place from timed_washes where id not in (select id from faults)
) where place > 1;
create table washes as
select timed_washes.* exclude (id, behind), inspections.* exclude (key, started, finished), inspections.started as inspected_at
from timed_washes join kept_inspections as inspections using (key) where timed_washes.id not in (select id from faults);

create table all_spending as
select id, nullif(cells[1], '') as entry, nullif(cells[2], '') as fy, nullif(cells[3], '') as category_cell,
  spent_on(nullif(cells[3], '')) as category, nullif(cells[4], '') as station, nullif(cells[5], '') as fund,
  nullif(cells[6], '') as dollars, written_number(nullif(cells[6], '')) as amount
from whole where file = 'office/spending.csv';
insert into faults
select id, 'missing-value' from (select id, unnest([entry, fy, category_cell, dollars]) as cell from all_spending) where cell is null;
insert into faults select id, 'unknown-code' from all_spending where category_cell is not null and category is null;
insert into faults
select id, code from (
  select id, unnest([number_fault(fy, written_number(fy), 1990, 2100), number_fault(dollars, amount, -5000000, 5000000)]) as code
  from all_spending
) where code is not null;
insert into faults
select id, 'unknown-reference' from all_spending where station is not null and station not in (select station from stations);
insert into faults
select id, 'duplicate-key' from (
  select id, row_number() over (partition by entry order by id) as place from all_spending where id not in (select id from faults)
) where place > 1;
create table spending as select *, fy::integer as fiscal_year from all_spending where id not in (select id from faults);
