/** Attribute of inputs for a length: what a laser tape types there is a length. */
export const LENGTH_INPUT = { 'data-length': '' } as const;

const SELECTOR = 'input[data-length]';

export function lengthInputAt(target: EventTarget | null): HTMLInputElement | null {
  return target instanceof HTMLInputElement && target.matches(SELECTOR) ? target : null;
}

/** Writes a text into a field as if it was typed, so that React is notified. */
export function typeInto(field: HTMLInputElement, text: string): void {
  if (field.value === text) return;
  const { set } = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value') ?? {};
  set?.call(field, text);
  field.dispatchEvent(new Event('input', { bubbles: true }));
}

/** Returns the next field for a length in the same panel; null after the last. */
export function nextLengthInput(field: HTMLInputElement): HTMLInputElement | null {
  const fields = [...(field.closest('section, form, dialog, nav, main') ?? document).querySelectorAll(SELECTOR)];
  const next = fields[fields.indexOf(field) + 1];
  return next instanceof HTMLInputElement ? next : null;
}
