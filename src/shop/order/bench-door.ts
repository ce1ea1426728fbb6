/** What a step's door to its bench says: what lies on it, and how far it is. */
export function benchDoor(slide: string, isOpen: boolean, rounds: number | undefined): string {
  const part = slide.charAt(0).toUpperCase() + slide.slice(1);
  if (!isOpen) return `${part}: opens with this step’s set-ups, targets and cautions`;
  return rounds === undefined ? part : `${part}: round ${rounds}`;
}
