-- Fouling sites: where mussels were found, among craft that carry the part and had it looked at.

-- One inspection and part: a part with sides counts once. It is carried unless it is absent, looked at where any side was, fouled
-- where any side had mussels; plants, mud and water are no mussels. A part that is carried and not looked at is skipped.
create table parts as
with by_part as (
  select inspection, place, bool_or(state in ('clean', 'fouled')) as is_looked, bool_or(found = 'mussels') is true as is_fouled
  from looks where turn = 'first' and state <> 'absent' group by inspection, place
)
select inspection, place, part, area, is_looked, is_fouled, season, station, day, direction, watercraft_type, drive
from by_part join catalogue using (place) join full_inspections on full_inspections.id = inspection;
create table fouled_craft as
select inspection, any_value(season) as season, any_value(station) as station, any_value(day) as day, any_value(direction) as direction,
  any_value(watercraft_type) as watercraft_type, count(*) as sites, list(part order by place) as parts_fouled
from parts where is_fouled group by inspection;

-- The sites of a selection of parts, with the sums that clustered limits of the four shares stand on: of fouled craft, of looks,
-- skipped of carried, and only site of fouled there. `chosen` has a column `grouped`; its fouled craft are those fouled in it.
create macro sites_of(chosen) as table
with counted as (
  select grouped, part, station, day, count(*) as carrying, count(*) filter (is_looked) as looked, count(*) filter (is_fouled) as fouled,
    count(*) filter (not is_looked) as skipped, count(*) filter (is_fouled and sites = 1) as sole
  from (select *, sum(is_fouled::integer) over (partition by grouped, inspection) as sites from query_table(chosen))
  group by grouped, part, station, day
), anywhere as (
  select grouped, station, day, count(distinct inspection) as craft from query_table(chosen) where is_fouled group by grouped, station, day
), whole_group as (
  select grouped, sum(craft) as craft, count(*) as clusters, sum(craft * craft) as squares from anywhere group by grouped
), crossed as (
  select grouped, part, sum(fouled * craft) as products from counted join anywhere using (grouped, station, day) group by grouped, part
)
select counted.grouped, part, sum(carrying) as carrying, sum(looked) as looked, sum(fouled) as fouled, coalesce(any_value(craft), 0) as craft,
  sum(skipped) as skipped, sum(sole) as sole,
  any_value(clusters) as craft_clusters,
  sum(fouled * fouled) - 2 * sum(fouled) / any_value(craft) * coalesce(any_value(products), 0)
    + pow(sum(fouled) / any_value(craft), 2) * any_value(squares) as craft_residuals,
  count(*) filter (looked > 0) as look_clusters, squared_residuals(fouled, looked) as look_residuals,
  count(*) as carry_clusters, squared_residuals(skipped, carrying) as carry_residuals,
  count(*) filter (fouled > 0) as sole_clusters, squared_residuals(sole, fouled) as sole_residuals
from counted left join whole_group using (grouped) left join crossed using (grouped, part)
group by counted.grouped, part;

create view this_season as select *, 'all' as grouped from parts where season = 2025;
create view drawn_builds as
select *, watercraft_type || '/' || coalesce(drive, '') as grouped from parts
where (watercraft_type in ('open motorboat', 'pontoon boat') and coalesce(drive, 'outboard') = 'outboard')
  or (watercraft_type in ('cabin motorboat', 'houseboat') and coalesce(drive, 'sterndrive') = 'sterndrive')
  or (watercraft_type = 'auxiliary sail' and coalesce(drive, 'inboard') = 'inboard');
create view drawn_types as
select *, watercraft_type as grouped from parts where watercraft_type in ('personal watercraft', 'sail only', 'paddlecraft');
create view on_trailers as select *, 'all' as grouped from parts where area = 'trailer';
