-- What the season report and the record quality page show of inspections and days.

-- A full inspection looks at the craft; a paper check looks at none and stands in no denominator. Season, month, weekday and hour
-- are those of the station's own clock. A station-day is a station on a date.
create view full_inspections as
select *, started::date as day, monthname(started) as month, outcome = 'intercepted' as is_case from kept_inspections where extent = 'full';

-- The status that a water had on a date: the last one since no later than it. The status of the last water is asked for the day of
-- the inspection.
create view last_statuses as
select id, arg_max(status, since) as last_status
from kept_inspections join waters on water = last_waterbody and since::date <= started::date group by id;

-- A share of trials that come in clusters: cases, trials, clusters with trials, and the sum of the squared residuals of the
-- clusters, which is what the variance of a ratio stands on (Cochran 1977, Sampling Techniques, eq. 11.13).
create macro squared_residuals(cases, trials) as
  sum(cases * cases) - 2 * sum(cases) / sum(trials) * sum(cases * trials) + pow(sum(cases) / sum(trials), 2) * sum(trials * trials);
create macro share_by(counted) as table
select grouped, sum(cases) as cases, sum(trials) as trials, count(*) as clusters, squared_residuals(cases, trials) as residuals
from (
  select grouped, station, day, count(*) as trials, count(*) filter (is_case) as cases
  from query_table(counted) group by grouped, station, day
) group by grouped;

create view share_of_all as select *, season as grouped from full_inspections;
create view share_of_established as
select full_inspections.* exclude (is_case), season as grouped, exists (
  select 1 from looks where looks.inspection = full_inspections.id and turn = 'first' and found = 'mussels' and is_attached and not is_trace
) as is_case from full_inspections;
create view share_with_water as select * exclude (is_case), season as grouped, standing_water = 'yes' as is_case from full_inspections;
create view share_with_plants as select * exclude (is_case), season as grouped, vegetation = 'yes' as is_case from full_inspections;
create view share_at_station as select *, station as grouped from full_inspections where season = 2025;
create view share_of_type as select *, watercraft_type as grouped from full_inspections where season = 2025;
create view share_by_way as select *, if(direction = 'leaving', 'leaving', 'arriving') as grouped from full_inspections where season = 2025;
create view arriving as select * from full_inspections where season = 2025 and direction <> 'leaving';
create view share_in_month as select *, month as grouped from arriving;
create view share_of_haul as select *, hauled_by as grouped from arriving;
create view share_of_home as select *, home_region as grouped from arriving;
create view share_of_status as select arriving.*, last_status as grouped from arriving left join last_statuses using (id);

create view counted_days as
select season, count(*) filter (state = 'open') as open, count(*) filter (state = 'closed') as closed,
  count(*) filter (state = 'not recorded') as unrecorded, sum(hours) filter (state = 'open') as hours
from days group by season;
create view station_hours as
select station, count(*) filter (state = 'open') as open, count(*) filter (state = 'closed') as closed,
  count(*) filter (state = 'not recorded') as unrecorded, count(*) filter (state = 'open' and hours is null) as without_hours,
  sum(hours) filter (state = 'open') as hours
from days where season = 2025 group by station;
create view paper_checks as select season, count(*) as checks from kept_inspections where extent = 'paper check' group by season;

-- Contradictions: an outcome that says mussels with no part that does, and the reverse.
create view contradictions as
select count(*) filter (is_case and not on_parts) as outcome_without_part, count(*) filter (not is_case and on_parts) as part_without_outcome
from (
  select is_case, exists (select 1 from looks where looks.inspection = full_inspections.id and turn = 'first' and found = 'mussels') as on_parts
  from full_inspections where season = 2025
);
