import fc from 'fast-check';
import { expect, it } from 'vitest';
import { withSameParts } from './same-parts.ts';
import { nodesOf, type Shape, shape, svgText } from './shape.ts';

const { node } = fc.letrec<{ node: Shape }>((tie) => ({
  node: fc
    .record({
      tag: fc.constantFrom('g', 'rect', 'text'),
      attributes: fc.dictionary(fc.constantFrom('x', 'y', 'fill'), fc.constantFrom(0, 1, 'ink')),
      children: fc.array(fc.oneof({ maxDepth: 4 }, fc.constantFrom('a', 'b'), tie('node')), { maxLength: 4 }),
    })
    .map(({ tag, attributes, children }) => shape(tag, attributes, children)),
}));

it('draws what is to be drawn, whatever was drawn before', () => {
  fc.assert(
    fc.property(node, node, (before, now) => {
      expect(svgText(withSameParts(before, now))).toBe(svgText(now));
    }),
  );
});

it('a drawing made anew is the one before, and of a changed one only the way to the change is new', () => {
  const made = (word: string) =>
    shape('svg', {}, shape('g', { x: 1 }, shape('rect', { y: 2 }), shape('text', {}, word)), shape('g', {}));
  const before = made('2');
  expect(withSameParts(before, made('2'))).toBe(before);
  const now = withSameParts(before, made('3'));
  expect(nodesOf(now).map((one) => nodesOf(before).includes(one))).toEqual([false, false, true, false, true]);
});
