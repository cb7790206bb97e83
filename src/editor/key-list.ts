/** The keys of the sheet that are no act on a thing, in the words of what they do: for the page that lists them. */
export const SHEET_KEYS: readonly { readonly keys: string; readonly does: string }[] = [
  {
    keys: 'Arrows',
    does: 'Move what is selected by 1 in (1 cm); with a thing in hand, the cross; with neither, the sheet',
  },
  { keys: 'Shift + arrows', does: 'By 1/8 in (1 mm)' },
  { keys: 'Ctrl + arrows', does: 'By 1 ft (10 cm)' },
  { keys: 'Enter', does: 'Set down at the cross; end a run of walls' },
  { keys: 'Shift + F10, Menu key', does: 'All that can be done with what is selected, or at the cross' },
  { keys: 'N, Shift + N', does: 'Select the next thing, the one before' },
  { keys: 'L', does: 'Type a length on the sheet: about what is selected, or of the rooms; Tab goes to the next' },
  { keys: 'R', does: 'Turn what is in hand by a right angle' },
  {
    keys: 'Digits',
    does: 'While a wall is drawn: type its length, then Enter; an arrow before it shows the direction. After a thing is put down: how far it is from the walls',
  },
  { keys: '<', does: 'While a wall is drawn: type how far it turns off, in degrees' },
  { keys: 'C', does: 'While walls are drawn: close the room' },
  { keys: 'S', does: 'Where the walls miss their start: spread what is missing over them' },
  { keys: 'Backspace', does: 'While a wall is drawn: take the last corner back' },
  { keys: 'Escape', does: 'Give up what is under way; put the thing in hand back; select nothing' },
  { keys: 'Ctrl + Z', does: 'Take the last step back' },
  { keys: 'Ctrl + Shift + Z, Ctrl + Y', does: 'Take it again' },
  { keys: 'Alt', does: 'Hold the snap off' },
  { keys: 'Space + drag', does: 'Move the sheet' },
  { keys: 'Page Up, Page Down', does: 'The level above, the level below' },
  { keys: '+ − 0', does: 'Larger, smaller, the whole level' },
];
