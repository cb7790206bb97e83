import { describe, expect, it } from 'vitest';
import { packPlaces, type ZipRow, zipRows } from '../../../../src/platform/places/pack-places.ts';
import { PlaceList, placeList } from '../../../../src/platform/places/places.ts';

const row = (zip: string, name: string, state = 'PA', latitude = 40, longitude = -80): ZipRow => ({
  ...{ zip, name, state, latitude, longitude },
  stateName: { PA: 'Pennsylvania', IL: 'Illinois', NY: 'New York', MO: 'Missouri' }[state] ?? '',
});
const namesOf = (list: PlaceList, text: string) => list.find(text).places.map(({ name }) => name);

describe('places by ZIP code', () => {
  const list = new PlaceList(packPlaces([row('01001', 'Agawam'), row('15213', 'Oakhill'), row('15217', 'Oakhill')]));

  it('are found by all digits, with the four after them too, and by the first three or four', () => {
    expect(list.find('15213')).toEqual({
      places: [{ name: '15213 Oakhill, PA', latitude: 40, longitude: -80 }],
      words: '',
    });
    expect(namesOf(list, ' 01001-2345 ')).toEqual(['01001 Agawam, PA']);
    expect(namesOf(list, '152')).toEqual(['15213 Oakhill, PA', '15217 Oakhill, PA']);
    expect(list.find('15')).toEqual({ places: [], words: '' });
  });

  it('that are wrong or not in the list get a sentence', () => {
    expect(list.find('15214').words).toBe(
      'ZIP code 15214 is not in the list. Check the digits, or type the town, or latitude and longitude.',
    );
    expect(list.find('999').words).toBe('No ZIP code begins with 999. Check the digits, or type the town.');
    expect(list.find('152133').words).toMatch(/^"152133" has 6 digits: a US ZIP code has 5\./);
    expect(list.find('K1A 0B1').words).toMatch(/outside the United States enter latitude and longitude\.$/);
  });
});

describe('places by town', () => {
  const list = new PlaceList(
    packPlaces([
      row('12001', 'New York', 'NY', 41, -74),
      row('15001', 'Saint Ann', 'PA'),
      row('15213', 'Springfield', 'PA', 40, -80),
      row('62701', 'Springfield', 'IL', 39.7, -89.6),
      row('62702', 'Springfield', 'IL', 39.9, -89.8),
      row('63101', 'Springfield Gardens', 'MO'),
      row('63201', 'Twin', 'MO', 38, -90),
      row('63301', 'Twin', 'MO', 40, -94),
    ]),
  );

  it('are found by how they begin: a whole name first, then the one with more ZIP codes', () => {
    expect(namesOf(list, 'spring')).toEqual(['Springfield, IL', 'Springfield Gardens, MO', 'Springfield, PA']);
    expect(namesOf(list, 'Springfield')).toEqual(['Springfield, IL', 'Springfield, PA', 'Springfield Gardens, MO']);
    expect(list.find('springfield, il').places).toEqual([
      { name: 'Springfield, IL', latitude: 39.8, longitude: -89.7 },
    ]);
    expect(namesOf(list, 'Springfield Pennsylvania')).toEqual(['Springfield, PA']);
    expect(namesOf(list, 'new york')).toEqual(['New York, NY']);
    expect(namesOf(list, 'St. Ann')).toEqual(['Saint Ann, PA']);
  });

  it('of one name that lie far apart are told by their ZIP codes', () => {
    expect(namesOf(list, 'twin')).toEqual(['63201 Twin, MO', '63301 Twin, MO']);
  });

  it('that are not in the list get a sentence', () => {
    expect(list.find('Nowhere').words).toMatch(/^No town in the list begins with "Nowhere"\./);
    expect(list.find('x')).toEqual({ places: [], words: '' });
  });
});

it('the list of the app has every row of the table, to a hundredth of a degree', () => {
  const list = placeList();
  const wrong = zipRows().filter(({ zip, name, state, latitude, longitude }) => {
    const [place] = list.find(zip).places;
    const off = [(place?.latitude ?? 0) - latitude, (place?.longitude ?? 0) - longitude].map(Math.abs);
    return place?.name !== `${zip} ${name}, ${state}` || off.some((each) => each > 0.00501);
  });
  expect(wrong).toEqual([]);
  expect(list.find('Springfield').words).toMatch(/^\d+ more: go on typing, or add the state\.$/);
});
