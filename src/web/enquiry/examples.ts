// The six ready enclosures that an enquiry can start from, in the order they are offered.
import type { Enclosure } from '../../physics/enclosure.ts';

const files = import.meta.glob<Enclosure>('../../../data/examples/*.json', { eager: true, import: 'default' });

export interface Example {
  readonly id: string;
  readonly enclosure: Enclosure;
}

/** From small to large, so that the drawings beside them grow. */
export const examples: readonly Example[] = Object.entries(files)
  .map(([path, enclosure]) => ({ id: path.replace(/^.*\/|\.json$/g, ''), enclosure }))
  .sort((a, b) => volume(a.enclosure) - volume(b.enclosure));

function volume({ box }: Enclosure): number {
  return box.lengthM * box.depthM * box.heightM;
}
