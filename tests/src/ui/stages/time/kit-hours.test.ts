import { expect, it } from 'vitest';
import { daysAsHours } from '../../../../../src/ui/stages/time/kit-hours.ts';

it.each([
  ['91 days', '2184'],
  ['2 d', '48'],
  ['1 day', '24'],
  ['2,5 days', '60'],
  ['48', '48'],
  ['two days', 'two days'],
  ['', ''],
])('%j is %j in hours', (text, hours) => {
  expect(daysAsHours(text)).toBe(hours);
});
