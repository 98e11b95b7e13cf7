-- The inspections of the lake tablets and of the road forms, as one table, and what sets a row of them aside.

create table waters as
select cells[1] as water, cells[4] as status, lake_day(cells[5]) as since from whole where file = 'lakes/waters.csv';

create table lake_forms as
with named as (
  select id, lake_cell(cells[1]) as key, lake_cell(cells[2]) as site, lake_cell(cells[3]) as start, lake_cell(cells[4]) as finish,
    lake_cell(cells[5]) as heading, lake_cell(cells[6]) as look, lake_cell(cells[7]) as craft_kind, lake_cell(cells[8]) as moved_by,
    lake_cell(cells[9]) as engine, lake_cell(cells[10]) as hull, lake_cell(cells[11]) as len_ft, lake_cell(cells[12]) as paint,
    lake_cell(cells[13]) as towed_by, lake_cell(cells[14]) as hull_no, lake_cell(cells[18]) as home, lake_cell(cells[19]) as last_water,
    lake_cell(cells[20]) as last_out, lake_cell(cells[21]) as moored, lake_cell(cells[22]) as next_water, lake_cell(cells[23]) as wet,
    lake_cell(cells[24]) as weeds, lake_cell(cells[25]) as risk, lake_cell(cells[26]) as result
  from whole where file like 'lakes/inspections-%'
)
select *, lake_moment(start) as started, lake_moment(finish) as finished, year(lake_moment(start)) as season from named;

create table road_forms as
with named as (
  select id, road_cell(cells[1]) as key, road_cell(cells[2]) as stn, road_cell(cells[3]) as day, road_cell(cells[4]) as time_in,
    road_cell(cells[5]) as time_out, road_cell(cells[6]) as way, road_cell(cells[7]) as look, road_cell(cells[8]) as kind,
    road_cell(cells[9]) as power, road_cell(cells[10]) as drive, road_cell(cells[11]) as hull, road_cell(cells[12]) as len_m,
    road_cell(cells[13]) as coat, road_cell(cells[14]) as tow, road_cell(cells[15]) as hin, road_cell(cells[19]) as reg,
    road_cell(cells[20]) as from_water, road_cell(cells[21]) as wet_on, road_cell(cells[22]) as slip, road_cell(cells[23]) as to_water, road_cell(cells[24]) as water,
    road_cell(cells[25]) as weed, road_cell(cells[26]) as grade, road_cell(cells[27]) as result, cells[29:57] as parts
  from whole where file like 'roads/forms-%'
)
select *, day || ' ' || time_in as start, day || ' ' || time_out as finish, road_moment(day || ' ' || time_in) as started,
  road_moment(day || ' ' || time_out) as finished, year(road_moment(day || ' ' || time_in)) as season
from named;

-- A field without which no inspection is kept: its number, station, start, direction, extent, type and outcome.
insert into faults
select id, 'missing-value' from (
  select id, unnest([key, site, start, heading, look, craft_kind, result]) as cell from lake_forms union all
  select id, unnest([key, stn, start, way, look, kind, result]) from road_forms
) where cell is null;

-- A text that the crosswalk gives no code for.
insert into faults
select id, 'unknown-code' from (
  select id, unnest([
    site is not null and lake_station(site) is null, heading is not null and lake_direction(heading) is null,
    look is not null and lake_extent(look) is null, craft_kind is not null and lake_type(craft_kind) is null,
    moved_by not in ('PR', 'WJ', 'SA', 'MA', 'OT'), engine is not null and lake_drive(engine) is null,
    hull not in ('AL', 'FG', 'PL', 'RV', 'ST', 'WD'), not yes_or_no(paint), towed_by not in ('O', 'H'), not yes_or_no(moored),
    wet is not null and lake_water(wet, season) is null, not yes_or_no(weeds), risk is not null and lake_risk(risk) is null,
    result is not null and lake_outcome(result, season) is null
  ]) as is_unknown from lake_forms union all
  select id, unnest([
    stn is not null and road_station(stn) is null, way is not null and road_direction(way) is null,
    look is not null and road_extent(look) is null, kind is not null and road_type(kind) is null,
    power not in ('p', 'j', 's', 'm', 'o'), drive is not null and road_drive(drive) is null,
    hull not in ('alu', 'gfk', 'pla', 'rub', 'ste', 'woo'), not one_or_zero(coat), tow not in ('1', '2'), not one_or_zero(slip),
    from_water is not null and road_water_name(from_water) is null, to_water is not null and road_water_name(to_water) is null,
    water is not null and road_water(water, season) is null, not one_or_zero(weed), grade is not null and road_risk(grade) is null,
    result is not null and road_outcome(result) is null
  ]) from road_forms
) where is_unknown;

-- Days, moments and lengths that are none; a length lies between 3 and 200 feet, and the roads write metres.
insert into faults
select id, unnest([
  moment_fault(start, lake_day(start[:10]), started), moment_fault(finish, lake_day(finish[:10]), finished),
  if(last_out is not null and lake_day(last_out) is null, 'not-a-date', null),
  number_fault(len_ft, written_number(len_ft), 3, 200)
]) as code from lake_forms;
insert into faults
select id, unnest([
  moment_fault(start, road_day(day), started), moment_fault(finish, road_day(day), finished),
  if(wet_on is not null and road_day(wet_on) is null, 'not-a-date', null),
  number_fault(len_m, comma_number(len_m), 3 * 0.3048, 200 * 0.3048)
]) from road_forms;
delete from faults where code is null;

-- A hull number names the same craft whatever its case and its spaces.
create macro craft_of(cell) as upper(trim(regexp_replace(cell, '\s+', ' ', 'g')));
create table inspections as
select id, key, lake_station(site) as station, 7 as behind, known_moment(started) as started, known_moment(finished) as finished,
  season, lake_direction(heading) as direction, lake_extent(look) as extent, lake_type(craft_kind) as watercraft_type, lake_drive(engine) as drive, craft_of(hull_no) as craft,
  last_water as last_waterbody, next_water as next_waterbody, lake_water(wet, season) as standing_water,
  map {'Y': 'yes', 'N': 'no'}[weeds] as vegetation, lake_risk(risk) as risk, lake_outcome(result, season) as outcome,
  map {'O': 'owner', 'H': 'commercial'}[towed_by] as hauled_by, home as home_region, lake_day(last_out)::date as last_on_water from lake_forms
union all
select id, key, road_station(stn), 8, known_moment(started), known_moment(finished), season, road_direction(way),
  road_extent(look), road_type(kind), road_drive(drive), craft_of(hin), road_water_name(from_water), road_water_name(to_water), road_water(water, season),
  map {'1': 'yes', '0': 'no'}[weed], road_risk(grade), road_outcome(result), map {'1': 'owner', '2': 'commercial'}[tow],
  reg, road_day(wet_on)::date from road_forms;

-- An inspection ends after it began, and within 12 hours.
create macro minutes_taken(inspection_started, inspection_finished, behind) as
  minutes_utc(inspection_finished, behind) - minutes_utc(inspection_started, behind);
insert into faults select id, 'wrong-order' from inspections where minutes_taken(started, finished, behind) < 0;
insert into faults select id, 'over-long' from inspections where minutes_taken(started, finished, behind) > 12 * 60;

-- A water that the list of waters does not have (the roads’ codes stand for listed ones).
insert into faults
select id, 'unknown-reference' from (select id, unnest([last_waterbody, next_waterbody]) as water from inspections)
where water is not null and water not in (select water from waters);
