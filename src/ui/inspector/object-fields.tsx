import { footprintReach } from '../../../geometry/dimension/footprint.ts';
import type { PlanObject } from '../../../geometry/plan/model.ts';
import { shapeMiddle } from '../../../geometry/plane/body.ts';
import { useAppStore } from '../../state/store.ts';
import { TextField } from '../fields/text-field.tsx';
import { HeightsAssumed } from './heights-assumed.tsx';
import { PlaceFields } from './place-fields.tsx';
import { HeightFields, ShapeFields } from './size-fields.tsx';

export function ObjectFields({ object }: { readonly object: PlanObject }) {
  const updateItem = useAppStore((state) => state.updateItem);
  const { id, name, shape, bottom, top } = object;
  return (
    <div className="fields">
      <div className="wide">
        <TextField label="Name" value={name} onCommit={(text) => updateItem(id, { name: text })} />
      </div>
      <PlaceFields middle={shapeMiddle(shape)} reach={footprintReach(shape)} />
      <ShapeFields id={id} shape={shape} />
      <HeightFields id={id} bottom={bottom} top={top} />
      <HeightsAssumed item={object} names={['Underside', 'Top']} />
    </div>
  );
}
