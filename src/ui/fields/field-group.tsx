import type { ReactNode } from 'react';
import './fields.css';

/** Fields that measure from the same place, under its name. */
export function FieldGroup({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <fieldset className="fields wide field-group">
      <legend>{name}</legend>
      {children}
    </fieldset>
  );
}
