import { describe, expect, it } from 'vitest';
import { zoneOfPlace } from '../../../src/advice/zone-of-place.ts';

const NOW = Date.UTC(2026, 10, 25);
const zone = (latitude: number, longitude: number, own = 'UTC') => zoneOfPlace(latitude, longitude, own, NOW);

describe('the time zone of a place', () => {
  it.each([
    { name: 'Pittsburgh', at: [40.44, -79.95], is: 'America/New_York' },
    { name: 'Denver', at: [39.74, -104.98], is: 'America/Denver' },
    { name: 'Phoenix', at: [33.45, -112.07], is: 'America/Phoenix' },
    { name: 'Honolulu', at: [21.31, -157.86], is: 'Pacific/Honolulu' },
    { name: 'Winnipeg', at: [49.9, -97.14], is: 'America/Winnipeg' },
    { name: 'Sydney', at: [-33.87, 151.21], is: 'Australia/Sydney' },
    { name: 'Suva, near the date line', at: [-18.14, 178.44], is: 'Pacific/Fiji' },
    { name: 'Longyearbyen', at: [78.22, 15.65], is: 'Arctic/Longyearbyen' },
  ] as const)('is that of $name', ({ at: [latitude, longitude], is }) => {
    expect(zone(latitude, longitude)).toEqual({ zone: is, isDoubtful: false });
  });

  it('is doubtful near a border of zones, where the map is coarse', () => {
    expect(zone(35.05, -85.31)).toMatchObject({ isDoubtful: true });
  });

  it('stays as the plan has it where a zone around keeps that time', () => {
    expect(zone(35.05, -85.31, 'America/New_York')).toEqual({ zone: 'America/New_York', isDoubtful: false });
    expect(zone(40.44, -79.95, 'America/Toronto')).toEqual({ zone: 'America/Toronto', isDoubtful: false });
    expect(zone(40.44, -79.95, 'America/Chicago')).toMatchObject({ zone: 'America/New_York' });
  });

  it('is found at the poles and on the date line', () => {
    for (const [latitude, longitude] of [
      [90, 0],
      [-90, 0],
      [0, 180],
      [0, -180],
      [65, 179.99],
    ] as const)
      expect(zone(latitude, longitude)?.zone).toBeTruthy();
  });
});
