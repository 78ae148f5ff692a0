-- The exported folder `results` as views, for DuckDB. Only this file and clickhouse.sql know an engine.
create or replace view answers as
select * from read_json('results/answers/*/*.ndjson', format = 'newline_delimited', hive_partitioning = false, columns = {
    device: 'VARCHAR', sequence: 'BIGINT', answered_at: 'VARCHAR', moment: 'BIGINT', day: 'DATE', person: 'VARCHAR',
    family: 'VARCHAR', version: 'INTEGER', seed: 'BIGINT', sheet: 'VARCHAR', sheet_hash: 'VARCHAR', kind: 'VARCHAR',
    set_name: 'VARCHAR', attempt: 'VARCHAR', guided: 'INTEGER', mark: 'VARCHAR', is_right: 'INTEGER',
    certainty: 'VARCHAR', sure_and_wrong: 'INTEGER', guess: 'DOUBLE', seconds: 'INTEGER', help: 'VARCHAR',
    slip: 'VARCHAR', competencies: 'VARCHAR', voided: 'INTEGER', edition: 'VARCHAR'
});

create or replace view competencies as
select * from read_json('results/competencies.ndjson', format = 'newline_delimited', columns = {
    family: 'VARCHAR', competency: 'VARCHAR'
});
