/**
 * Keeps the focus where a tap has just put it. After a tap the browser sends an emulated mouse press and a click to whatever has appeared
 * under the finger: they would move the focus to the sheet, or press a button that the user has not seen. On a busy device they come late,
 * but always before the next press. Returns the function that ends it.
 */
export function keepFocusOfTap(): () => void {
  return swallowTap(() => true);
}

/**
 * Keeps the focus on what a tap on the sheet has opened under the finger, and keeps that tap from pressing one of its buttons. Returns the
 * function that ends it.
 */
export function keepTapOn(sheet: HTMLElement): () => void {
  return swallowTap(({ target }) => !(target instanceof Node && sheet.contains(target)));
}

function swallowTap(isStray: (event: MouseEvent) => boolean): () => void {
  const onPress = (event: MouseEvent) => {
    if (isStray(event)) event.preventDefault();
  };
  const onClick = (event: MouseEvent) => {
    if (isStray(event)) {
      event.preventDefault();
      event.stopPropagation();
    }
    end();
  };
  const end = () => {
    window.removeEventListener('mousedown', onPress, { capture: true });
    window.removeEventListener('click', onClick, { capture: true });
    for (const next of NEXT) window.removeEventListener(next, end, { capture: true });
  };
  window.addEventListener('mousedown', onPress, { capture: true });
  window.addEventListener('click', onClick, { capture: true });
  for (const next of NEXT) window.addEventListener(next, end, { capture: true });
  return end;
}

/** Events of the next press, after which no emulated event of the tap follows. */
const NEXT = ['pointerdown', 'keydown'] as const;
