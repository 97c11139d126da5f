/** Fills that tell energies apart without colour; charts refer to them by name. */
export const patterns: string = `<svg class="patterns" aria-hidden="true" focusable="false"><defs>
<pattern id="thrown-hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="6" height="6" fill="var(--paper)"/><line x1="1.2" x2="1.2" y1="0" y2="6" stroke="var(--thrown)" stroke-width="1.8"/></pattern>
<pattern id="engine-dots" width="6" height="6" patternUnits="userSpaceOnUse"><rect width="6" height="6" fill="var(--engine)"/><circle cx="3" cy="3" r="1.5" fill="var(--paper)"/></pattern>
</defs></svg>`;
