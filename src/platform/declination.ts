import geomagnetism from 'geomagnetism';

/**
 * Returns how far magnetic north is from true north, degrees clockwise, at a place in degrees north and east (World Magnetic Model,
 * extrapolated past its last year).
 * @param at ms since 1970
 */
export const declination = (latitude: number, longitude: number, at: number): number =>
  geomagnetism.model(new Date(at), { allowOutOfBoundsModel: true }).point([latitude, longitude]).decl;
