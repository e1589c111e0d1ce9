// Wrong: the solver is mathematics, and knows neither database nor files nor features.
import { readFileSync } from 'node:fs';
import { DataSource } from 'typeorm';
import { person } from '../access/person';

export const wrong = [DataSource, readFileSync, person];
