/** The whole screen. */
export function App() {
  return (
    <main>
      <h1>Stillspot</h1>
      <p>Where a radon detector may sit, and why not elsewhere.</p>
    </main>
  );
}
