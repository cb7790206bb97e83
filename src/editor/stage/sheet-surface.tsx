import { useEffect, useRef } from 'react';
import { useMenu } from '../../state/menu.ts';
import { useShown } from '../../state/shown.ts';
import { useAppStore } from '../../state/store.ts';
import { useLengths } from '../lengths/store.ts';
import { usePictures } from '../picture-store.ts';
import { useSketch } from '../sketch.ts';
import type { Layer } from './layer.ts';
import { createSurface } from './surface.ts';

interface Props {
  readonly name: string;
  readonly layers: readonly Layer[];
  /** Its lowest layer leaves nothing bare. */
  readonly opaque?: boolean;
}

/** A canvas over the whole stage. React draws it once; what is on it follows the stores by itself. `layers` never change. */
export function SheetSurface({ name, layers, opaque = false }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    if (!canvas.current) return;
    const surface = createSurface(canvas.current, layers, opaque);
    const stops = [useAppStore, useSketch, useShown, useMenu, usePictures, useLengths].map((store) =>
      store.subscribe(surface.wake),
    );
    surface.wake();
    return () => {
      for (const stop of stops) stop();
      surface.stop();
    };
  }, [layers, opaque]);
  return <canvas ref={canvas} className="plan-canvas__surface" data-surface={name} />;
}
