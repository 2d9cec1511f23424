/** Convex polygons: circles as polygons, one clipped by another, areas. I. E. Sutherland, G. W. Hodgman, Comm. ACM 17 (1974) 32-42 (from memory). */

export type Point = readonly [x: number, y: number];

/** A circle as a polygon of the same area, against the clock. */
export function disk(x: number, y: number, radius: number, corners: number): Point[] {
  const step = (2 * Math.PI) / corners;
  const reach = radius * Math.sqrt(step / Math.sin(step));
  return Array.from({ length: corners }, (_, i) => [
    x + reach * Math.cos(i * step),
    y + reach * Math.sin(i * step),
  ]);
}

/** The part of `subject` inside the convex polygon `window`. */
export function clipped(subject: readonly Point[], window: readonly Point[]): Point[] {
  let result = [...subject];
  window.forEach(([x1, y1], k) => {
    const [x2, y2] = window[(k + 1) % window.length] ?? [x1, y1];
    const side = ([x, y]: Point): number => (x2 - x1) * (y - y1) - (y2 - y1) * (x - x1);
    const kept: Point[] = [];
    result.forEach((here, i) => {
      const before = result[(i + result.length - 1) % result.length] ?? here;
      const [a, b] = [side(before), side(here)];
      if (a >= 0 !== b >= 0) {
        const t = a / (a - b);
        kept.push([before[0] + t * (here[0] - before[0]), before[1] + t * (here[1] - before[1])]);
      }
      if (b >= 0) kept.push(here);
    });
    result = kept;
  });
  return result;
}

export const area = (polygon: readonly Point[]): number =>
  polygon.reduce((sum, [x, y], i) => {
    const [u, v] = polygon[(i + 1) % polygon.length] ?? [x, y];
    return sum + (x * v - y * u) / 2;
  }, 0);

/** Distance from the origin to a circle along the direction of an angle: the far crossing; NaN where there is none. */
export function rayToCircle(angle: number, x: number, y: number, radius: number): number {
  const along = x * Math.cos(angle) + y * Math.sin(angle);
  return along + Math.sqrt(along * along - x * x - y * y + radius * radius);
}
