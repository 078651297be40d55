import { describe, expect, it } from 'vitest';
import { Slots } from '../../src/notebook/slots.ts';
import { example, scenario } from './notebooks.ts';

/** A browser's storage, with as much room as it is given. */
class Shelf implements Storage {
  private readonly kept = new Map<string, string>();
  private readonly room: number;
  constructor(room = Infinity) {
    this.room = room;
  }
  get length(): number {
    return this.kept.size;
  }
  key = (n: number): string | null => [...this.kept.keys()][n] ?? null;
  getItem = (key: string): string | null => this.kept.get(key) ?? null;
  setItem = (key: string, text: string): void => {
    if (text.length > this.room) throw new Error('full');
    this.kept.set(key, text);
  };
  removeItem = (key: string): void => void this.kept.delete(key);
  clear = (): void => this.kept.clear();
}
const mine = { document: example, opened: scenario('milled-four') };
const other = { document: scenario('two-cams'), opened: scenario('two-cams') };

describe('the slots', () => {
  it('bring back what was saved, and where it was opened', () => {
    const shelf = new Shelf();
    expect(new Slots(shelf, null).mine()).toBe(undefined);
    expect(new Slots(shelf, null).save(mine)).toBeNull();
    expect(new Slots(shelf, null).mine()).toEqual(mine);
  });
  it('keep the copy of a link apart, for that link alone', () => {
    const [local, session] = [new Shelf(), new Shelf()];
    const slots = new Slots(local, session);
    slots.save(mine);
    expect(slots.saveVisit('#1.abc', other)).toBeNull();
    expect(slots.visit('#1.abc')).toEqual({ ...other, fragment: '#1.abc' });
    expect(slots.visit('#1.abd')).toBe(undefined);
    expect(slots.mine()).toEqual(mine);
    expect(new Slots(local, new Shelf()).visit('#1.abc')).toBe(undefined);
  });
  it('put the reader’s own aside before another takes its place', () => {
    const slots = new Slots(new Shelf(), null);
    expect(slots.putAside()).toBeNull();
    slots.save(mine);
    expect(slots.putAside()).toEqual({ aside: mine, isKept: true });
    slots.save(other);
    expect(slots.mine()).toEqual(other);
    expect(slots.aside()).toEqual(mine);
    slots.dropAside();
    expect(slots.aside()).toBe(undefined);
  });
  it('say that what is put aside found no room beside it', () => {
    const shelf = new Shelf();
    const slots = new Slots(shelf, null);
    slots.save(mine);
    shelf.setItem = () => {
      throw new Error('full');
    };
    expect(slots.putAside()).toEqual({ aside: mine, isKept: false });
  });
  it('say in a sentence that nothing can be kept, or nothing more', () => {
    for (const slots of [new Slots(null, null), new Slots(new Shelf(100), new Shelf(100))]) {
      for (const fault of [slots.save(mine), slots.saveVisit('#1.a', mine)])
        expect(fault).toMatch(/^(The|This) .*leave\.$/);
      expect(slots.mine()).toBe(undefined);
      expect(slots.putAside()).toBeNull();
    }
  });
  it.each(['', 'null', '7', '"text"', '[]', '{}', '{"opened":{}}', '{"document":', '\u0000'])(
    'that hold “%s” hold nothing',
    (text) => {
      const shelf = new Shelf();
      new Slots(shelf, null).save(mine);
      shelf.setItem(shelf.key(0)!, text);
      expect(new Slots(shelf, null).mine()).toBe(undefined);
    },
  );
});
