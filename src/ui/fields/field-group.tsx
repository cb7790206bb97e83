import type { ReactNode } from 'react';
import './fields.css';

/** A group of fields under one name. */
export function FieldGroup({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <fieldset className="fields wide field-group">
      <legend>{name}</legend>
      {children}
    </fieldset>
  );
}
