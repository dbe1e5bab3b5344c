import type { MapScene } from './mapScene';

/**
 * Whether most shapes of a scene lie exactly over others, as articulations do that cover the same keys and velocities: all
 * of them at once then show little more than the uppermost.
 */
export function isPiled({ shapes }: Pick<MapScene, 'shapes'>): boolean {
  const cells = new Set<number>();
  for (const { lowKey, highKey, lowVelocity, highVelocity } of shapes)
    cells.add(((lowKey * 128 + highKey) * 128 + lowVelocity) * 128 + highVelocity);
  return cells.size * 2 <= shapes.length;
}
