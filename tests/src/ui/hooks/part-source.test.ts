import { describe, expect, it, vi } from 'vitest';
import { PartSource } from '../../../../src/ui/hooks/part-source.ts';

const Panel = () => null;

describe('the source of a part', () => {
  it('has the part for who subscribes after it came: no news is needed then', async () => {
    const source = new PartSource(async () => Panel);
    await source.request();
    const listener = vi.fn();
    source.subscribe(listener);
    expect(source.part).toBe(Panel);
    expect(listener).not.toHaveBeenCalled();
  });

  it('tells who subscribed before, once it is there', async () => {
    const source = new PartSource(async () => Panel);
    const seen: unknown[] = [];
    source.subscribe(() => seen.push(source.part));
    await source.request();
    expect(seen.at(-1)).toBe(Panel);
  });

  it('requests once, however many ask, and not again when it is there', async () => {
    const load = vi.fn(async () => Panel);
    const source = new PartSource(load);
    await Promise.all([source.request(), source.request()]);
    await source.request();
    expect(load).toHaveBeenCalledTimes(1);
  });

  it('is missing after a failure, and not while it is requested again', async () => {
    const load = vi.fn(async () => Panel).mockRejectedValueOnce(new Error('no network'));
    const source = new PartSource(load);
    await source.request();
    expect([source.part, source.isMissing]).toEqual([null, true]);
    const again = source.request();
    expect(source.isMissing).toBe(false);
    await again;
    expect([source.part, source.isMissing]).toEqual([Panel, false]);
  });

  it('tells nobody who has left', async () => {
    const source = new PartSource(async () => Panel);
    const listener = vi.fn();
    source.subscribe(listener)();
    await source.request();
    expect(listener).not.toHaveBeenCalled();
  });
});
