-- Looks by themselves: hidden parts and plain ones, means, sides, pairs of parts, and second looks beside first ones.

create view first_looks as
select looks.*, part, hidden, station, day, season, watercraft_type from looks join catalogue using (place)
join full_inspections on full_inspections.id = inspection where turn = 'first';
create table carried_looks as select * from first_looks where season = 2025 and state <> 'absent';
create view skipped_by_hidden as
select *, if(hidden, 'yes', 'no') as grouped, state = 'not checked' as is_case from carried_looks;
create view found_by_hidden as
select *, if(hidden, 'yes', 'no') as grouped, coalesce(found = 'mussels', false) as is_case from carried_looks where state <> 'not checked';
create view found_by_means as
select station, day, unnest(['sight', 'feel', 'mirror', 'light', 'magnifier', 'camera']) as grouped, grouped = means as is_case
from first_looks where season = 2025 and found = 'mussels' and means is not null;

-- Both sides of a part on one craft; only craft on which both were looked at are compared.
create view sides_compared as
select part, count(*) filter (looked = 2) as both_looked, count(*) filter (looked = 1) as one_looked,
  count(*) filter (looked = 2 and not port and not starboard) as neither, count(*) filter (looked = 2 and port and not starboard) as port_only,
  count(*) filter (looked = 2 and starboard and not port) as starboard_only, count(*) filter (looked = 2 and port and starboard) as both_fouled
from (
  select inspection, part, count(*) filter (state <> 'not checked') as looked, bool_or(side = 'port' and found = 'mussels') is true as port,
    bool_or(side = 'starboard' and found = 'mussels') is true as starboard
  from carried_looks where side in ('port', 'starboard') group by inspection, part
) group by part;

-- Two parts on one fouled craft, both looked at, mussels on at least one of them; pairs found together on five craft or more.
create view parts_together as
with looked as (
  select parts.* from parts join fouled_craft using (inspection) where parts.season = 2025 and is_looked
)
select one.part as part, other.part as other, count(*) as looked_both, count(*) filter (one.is_fouled or other.is_fouled) as either,
  count(*) filter (one.is_fouled and other.is_fouled) as together,
  together * looked_both / (count(*) filter (one.is_fouled) * count(*) filter (other.is_fouled)) as times_chance
from looked as one join looked as other on one.inspection = other.inspection and one.place < other.place
group by one.part, other.part having count(*) filter (one.is_fouled and other.is_fouled) >= 5;

-- Parts and sides that were looked at twice, and the craft they sit on: found by both looks, by the first, by the second.
create table seen_twice as
select first_looks.inspection, season, station, day, first_looks.found is not distinct from 'mussels' as by_first,
  second.found is not distinct from 'mussels' as by_second
from first_looks join looks as second
  on second.inspection = first_looks.inspection and second.place = first_looks.place and second.side = first_looks.side
where second.turn = 'second' and first_looks.state in ('clean', 'fouled') and second.state in ('clean', 'fouled');
create macro two_looks(first_season) as table
with units as (
  select 'parts' as unit, station, day, by_first, by_second from seen_twice where season >= first_season union all
  select 'craft', any_value(station), any_value(day), bool_or(by_first), bool_or(by_second)
  from seen_twice where season >= first_season group by inspection
), by_day as (
  select unit, station, day, count(*) as twice, count(*) filter (by_first and by_second) as cases, count(*) filter (by_second) as trials,
    count(*) filter (by_first and not by_second) as first_only
  from units group by unit, station, day
)
select unit, sum(twice) as looked_twice, sum(cases) as cases, sum(trials) as trials, sum(first_only) as first_only,
  count(*) filter (trials > 0) as clusters, squared_residuals(cases, trials) as residuals
from by_day group by unit;

-- Starts at the full and at the half hour, of inspections of any kind.
create view starts as select *, started::date as day, station as grouped from kept_inspections where season = 2025;
create view starts_on_hour as select *, minute(started) = 0 as is_case from starts;
create view starts_on_half as select *, minute(started) = 30 as is_case from starts;

-- Craft arriving, season by season; and parts of the season before.
create view arriving_by_season as select *, season as grouped from full_inspections where direction <> 'leaving';
create view last_season as select *, 'all' as grouped from parts where season = 2024;

-- The share of each code among full inspections with any code in its field, season by season.
create view code_shares as
with coded as (
  select field, code, season, station, day, count(*) as cases
  from (
    select season, station, day, unnest(['standing_water', 'vegetation', 'risk', 'outcome', 'direction']) as field,
      unnest([standing_water, vegetation, risk, outcome, direction]) as code from full_inspections
  ) where code is not null group by all
), by_day as (
  select field, season, station, day, sum(cases) as trials from coded group by all
), by_season as (
  select field, season, sum(trials) as trials, count(*) as clusters, sum(trials * trials) as squares from by_day group by all
)
select field || '/' || code || '/' || season as grouped, sum(cases) as cases, any_value(by_season.trials) as trials,
  any_value(clusters) as clusters, sum(cases * cases) - 2 * sum(cases) / any_value(by_season.trials) * sum(cases * by_day.trials)
    + pow(sum(cases) / any_value(by_season.trials), 2) * any_value(squares) as residuals
from coded join by_day using (field, season, station, day) join by_season using (field, season) group by field, code, season;

-- Fields of inspections of any kind that were left without a value.
create view missing_values as
unpivot (
  select count(*) - count(drive) as drive, count(*) - count(nullif(craft, '')) as craft, count(*) - count(last_waterbody) as last_waterbody,
    count(*) - count(last_on_water) as last_on_water, count(*) - count(next_waterbody) as next_waterbody
  from kept_inspections where season = 2025
) on columns(*) into name field value missing;

-- What is noted on rows that are kept, in all seasons; days without a trace have neither hours nor an inspection.
create view noted as
with told as (
  select days.*, exists (
    select 1 from kept_inspections where kept_inspections.station = days.station and started::date = days.day
  ) as has_forms from days
), outcomes as (
  select outcome = 'intercepted' as is_case, exists (
    select 1 from looks where inspection = id and turn = 'first' and found = 'mussels'
  ) as on_parts from kept_inspections
), one_sided as (
  select inspection, place from looks where side <> 'none' group by turn, inspection, place having count(*) = 1
), heaped as (
  -- Starts at the full or half hour are one in thirty; by station and file more than three times as many are noted.
  select file, station from kept_inspections join rows using (id) group by file, station
  having count(*) filter (minute(started) in (0, 30)) > 3 * count(*) / 30
), shares as (
  -- A code that is used twenty times and more, by office: its share moved threefold from one season to the next.
  select behind, field, code, season, count(*) as uses, count(*) / sum(count(*)) over (partition by behind, field, season) as share
  from (
    select behind, season, unnest(['standing_water', 'vegetation', 'risk', 'outcome', 'direction']) as field,
      unnest([standing_water, vegetation, risk, outcome, direction]) as code from kept_inspections
  ) where code is not null group by behind, field, code, season
), jumps as (
  select 1 from shares as later join shares as earlier using (behind, field, code)
  where later.season = earlier.season + 1 and greatest(later.uses, earlier.uses) >= 20
    and greatest(later.share / earlier.share, earlier.share / later.share) >= 3
)
select 'hours-not-recorded' as code, count(*) as times from told where state = 'open' and hours is null union all
select 'open-without-trace', count(*) from told where state = 'open' and hours is null and not has_forms union all
select 'inspected-while-closed', count(*) from told where state = 'closed' and has_forms union all
select 'outcome-without-part', count(*) from outcomes where is_case and not on_parts union all
select 'part-without-outcome', count(*) from outcomes where not is_case and on_parts union all
select 'one-side-only', count(*) from one_sided union all
select 'clock-heaping', count(*) from heaped union all
select 'share-jump', count(*) from jumps;
