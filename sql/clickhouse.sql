-- The exported folder `results` as views, for ClickHouse and chDB. Only this file and duckdb.sql know an engine.
-- On a cluster, put s3Cluster('CLUSTER', 'https://.../results/answers/*/*.ndjson', ...) in the place of file(...).
create or replace view answers as
select * from file('results/answers/*/*.ndjson', JSONEachRow, '
    device String, sequence Int64, answered_at String, moment Nullable(Int64), day Nullable(Date32), person String,
    family String, version Int32, seed Int64, sheet String, sheet_hash String, kind String,
    set_name Nullable(String), attempt Nullable(String), guided Nullable(Int32), mark String, is_right Int32,
    certainty String, sure_and_wrong Int32, guess Nullable(Float64), seconds Nullable(Int32), help String,
    slip Nullable(String), competencies String, voided Int32, edition String
') settings use_hive_partitioning = 0;

create or replace view competencies as
select * from file('results/competencies.ndjson', JSONEachRow, 'family String, competency String');
