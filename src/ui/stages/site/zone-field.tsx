import { TypedField } from '../../fields/typed-field.tsx';

/** A field for an IANA time zone. A zone that this computer does not know is refused, since every time of the visit depends on it. */
export function ZoneField({
  value,
  onCommit,
}: {
  readonly value: string;
  readonly onCommit: (zone: string) => string | undefined;
}) {
  return (
    <TypedField
      label="Time zone"
      shown={value}
      read={(text) => {
        const zone = text.trim().replaceAll(' ', '_');
        const known = knownZone(zone);
        return known
          ? { ok: true, value: known, echo: known }
          : {
              ok: false,
              message: `"${text.trim()}" is not a time zone that this computer knows. Write one like America/New_York.`,
            };
      }}
      onCommit={onCommit}
    />
  );
}

/** Returns the zone in its standard spelling ("america/new_york" → "America/New_York"); empty if it is not known. */
function knownZone(zone: string): string {
  if (!zone.includes('/') && zone.toUpperCase() !== 'UTC') return '';
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone;
  } catch {
    return '';
  }
}
