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
from all_station_days left join recorded using (station, day) left join inspected using (station, day) left join washed using (station, day);

-- The count, and the variance of a total of clusters within strata: sum over strata of m ÷ (m − 1) × squared residuals.
create view counts_bought as
select outcome, sum(total) as counted, sum(if(m > 1, m / (m - 1) * (squares - total * total / m), 0)) as variance
from (
  select outcome, station, is_active, count(*) as m, sum(counted) as total, sum(counted * counted) as squares
  from bought group by outcome, station, is_active
) group by outcome;
create view counts_at_stations as select station, outcome, sum(counted) as counted from bought group by station, outcome;
