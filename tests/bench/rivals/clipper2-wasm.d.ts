/** The package ships its types beside the place that it names for them. */
declare module 'clipper2-wasm' {
  import type { MainModule } from 'clipper2-wasm/dist/clipper2z.d.ts';

  const load: () => Promise<MainModule>;
  export default load;
}
