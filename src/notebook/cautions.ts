import type { Cell } from '../graph/cell.ts';
import { sentence, type Verdict, type VerdictKind } from '../graph/kind.ts';
import { Probe } from '../graph/probe.ts';
import type { Snapshot } from '../graph/snapshot.ts';
import type { Phrase } from '../units/phrase.ts';
import type { Catalogue } from './catalogue.ts';

const rank = { comfortable: 0, borderline: 1, beyond: 2 };

/**
 * The cautions that a change of one cell would switch on: remarks that are silent now, verdicts whose word gets worse.
 * A change that mends one thing by spoiling another says so. Throws NotSettled.
 */
export function cautionsTurnedOn(at: Snapshot, { cells }: Catalogue, vary: Cell, value: number): readonly Phrase[] {
  const warned: Phrase[] = [];
  for (const c of cells.values()) {
    const isRemark = c.role !== 'input' && c.kind.name === 'remark' && c.about !== undefined;
    if (c.kind.name !== 'verdict' && !isRemark) continue;
    const probe = new Probe(at, [vary], [c]);
    if (probe.path.length === 0 || probe.isSlow) continue; // what takes long is said when it is there
    const before = at.state(at.graph.slotOf.get(c)!);
    probe.put(0, value);
    probe.tryRun();
    const after = probe.tryGet(0);
    const now = before.is === 'ready' ? before.value : undefined;
    if (isRemark && after && !now) warned.push(after as Phrase);
    if (c.kind.name === 'verdict' && after) {
      const kind = c.kind as unknown as VerdictKind;
      const tone = (v: unknown): number => rank[kind.words.find((w) => w.id === (v as Verdict).word)!.tone];
      if (now === undefined ? tone(after) > 0 : tone(after) > tone(now)) warned.push(sentence(kind, after as Verdict));
    }
  }
  return warned;
}
