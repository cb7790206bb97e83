import { useAppStore } from '../state/store.ts';
import { LengthField } from './fields/length-field.tsx';

/** The height that the sheet is shaded for and that the next detector is set at. */
export function DetectorHeight() {
  const sitHeight = useAppStore((state) => state.sitHeight);
  const setSitHeight = useAppStore((state) => state.setSitHeight);
  return (
    <LengthField
      label="Shade the sheet for a detector at"
      value={sitHeight}
      bare="small"
      hint="Its underside above the finished floor. One that is set on a table stands as high as the table."
      onCommit={(base) => {
        setSitHeight(base);
        return undefined;
      }}
    />
  );
}
