-- What was spent, and what it is held against: everything of the calendar year of the same number.

create view spent as
select coalesce(station, 'nobody') as station, category, fund, amount from spending where fiscal_year = 2025;

-- Each thing that money bought, by station-day, with the stratum in which station-days are drawn again: station and year, days
-- that were not open and had no inspection apart.
create table bought as
with all_station_days as (
  select station, day from days where season = 2025 union select station, started::date from kept_inspections where season = 2025
), inspected as (
  select station, started::date as day, count(*) as looks, count(*) filter (extent = 'full') as full_looks,
    count(*) filter (extent = 'full' and risk = 'high') as risky, count(*) filter (extent = 'full' and outcome = 'intercepted') as cases
  from kept_inspections where season = 2025 group by all
), washed as (
  select station, inspected_at::date as day, count(*) as washes from washes where season = 2025 group by all
), recorded as (
  select station, day, state = 'open' as is_open, if(state = 'open', coalesce(hours, 0), 0) as hours from days where season = 2025
)
select station, day, coalesce(is_open, false) or looks is not null as is_active,
  unnest([
    {outcome: 'staff hour recorded', counted: coalesce(hours, 0)::double}, {outcome: 'open station day', counted: coalesce(is_open::integer, 0)},
    {outcome: 'inspection of any kind', counted: coalesce(looks, 0)}, {outcome: 'full inspection', counted: coalesce(full_looks, 0)},
    {outcome: 'high-risk full inspection', counted: coalesce(risky, 0)}, {outcome: 'wash ordered', counted: coalesce(washes, 0)},
    {outcome: 'interception', counted: coalesce(cases, 0)}
  ], recursive := true)
from all_station_days left join recorded using (station, day) left join inspected using (station, day)
left join washed using (station, day);

-- The count, and the variance of a total of clusters within strata: sum over strata of m ÷ (m − 1) × squared residuals.
create view counts_bought as
select outcome, sum(total) as counted, sum(if(m > 1, m / (m - 1) * (squares - total * total / m), 0)) as variance
from (
  select outcome, station, is_active, count(*) as m, sum(counted) as total, sum(counted * counted) as squares
  from bought group by outcome, station, is_active
) group by outcome;
create view counts_at_stations as select station, outcome, sum(counted) as counted from bought group by station, outcome;

-- A ratio of two totals with its standard error by linearisation, station-days within the strata of `bought` (Cochran 1977,
-- Sampling Techniques, eq. 6.13 and 11.13): what resampling should come near to.
create macro ratio_of(counted) as table
with totals as (
  select grouped, sum(above) as above, sum(below) as below from query_table(counted) group by grouped
), strata as (
  select grouped, station, is_active, count(*) as m, sum(counts.above - totals.above / totals.below * counts.below) as total,
    sum(pow(counts.above - totals.above / totals.below * counts.below, 2)) as squares
  from query_table(counted) as counts join totals using (grouped) group by grouped, station, is_active
)
select grouped, any_value(above / below) as ratio,
  sqrt(sum(if(m > 1, m / (m - 1) * (squares - total * total / m), 0))) / any_value(below) as error
from strata join totals using (grouped) group by grouped;
create view looks_an_hour as
select 'all' as grouped, station, day, is_active, sum(counted) filter (outcome = 'full inspection') as above,
  sum(counted) filter (outcome = 'staff hour recorded') as below
from bought group by station, day, is_active;
create view cases_by_season as
select season as grouped, station, day, true as is_active, count(*) filter (is_case) as above, count(*) as below
from full_inspections group by season, station, day;
create view parts_on_craft as
select 'all' as grouped, station, day, true as is_active, sum(sites) as above, count(*) as below
from fouled_craft where season = 2025 group by station, day;

-- Staff hours by weekday and clock hour: those of each open day with hours and times, spread evenly from opening to closing; and the
-- inspections of any kind begun in that hour on those days.
create table crowd as
with staffed as (
  select station, day::date as day, opened, closed, hours from days
  where season = 2025 and state = 'open' and hours is not null and opened is not null and closed is not null
), spread as (
  select dayname(day) as weekday, clock as hour, sum(hours / (epoch(closed) - epoch(opened)) * greatest(0,
    least(epoch(closed), epoch(day) + 3600 * (clock + 1)) - greatest(epoch(opened), epoch(day) + 3600 * clock))) as staff
  from staffed, (select unnest(range(24)) as clock) group by all having staff > 0
), begun as (
  select dayname(started) as weekday, hour(started) as hour, count(*) as craft
  from kept_inspections join staffed on staffed.station = kept_inspections.station and staffed.day = started::date group by all
)
select weekday, hour, coalesce(staff, 0) as staff, coalesce(craft, 0) as craft from spread full join begun using (weekday, hour);
create view quiet as
select sum(staff) filter (is_quiet) as quiet_staff_hours, sum(craft) filter (is_quiet) as quiet_craft,
  quiet_staff_hours / sum(staff) as quiet_share, quiet_craft / sum(craft) as quiet_craft_share
from (select *, craft / staff < 0.2 as is_quiet from crowd);

-- The wash units as listed, and the washes of 2025 at each.
create view units as
select cells[1] as unit, cells[4]::double as price, cells[6]::double as life, cells[7]::double as running,
  (select count(*) from washes where season = 2025 and washes.unit = cells[1]) as washed
from whole where file = 'lakes/wash-units.csv';
