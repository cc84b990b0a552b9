/**
 * Schema 6: what the place Orders asks. What the customer says and the titles of jobs are found by pieces of three
 * characters and more (see schema 4); a no, a job that came back, each by an index that holds only these. Nothing here is
 * a record: it can be made anew from the tables.
 */
import { findIndex } from './4-find.ts';

const SHORT_QUESTIONS = `
CREATE INDEX decision_job_no ON decision_job (decision_id) WHERE answer = 'no';
CREATE INDEX job_came_back ON job (work_order_id) WHERE first_job_id IS NOT NULL;
`;

const sql =
  findIndex({ table: 'work_order', columns: { words: 'complaint' } }) +
  findIndex({ table: 'job', columns: { words: 'title' } }) +
  SHORT_QUESTIONS;

export const orders = { version: 6, name: 'orders', sql };
