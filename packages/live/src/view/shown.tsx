import { figure } from '@wintergap/report/in-page';
import type { VNode } from 'preact';

export interface Figured {
  name: string;
  id: string;
  value: number | undefined;
  unit: string;
}

/** A figure for people, with the whole number behind it. */
export function Shown({ id, value, digits }: { id: string; value: number | undefined; digits?: number }): VNode {
  if (value === undefined) return <span id={id}>…</span>;
  return (
    <data id={id} value={String(value)}>
      {figure(value, digits)}
    </data>
  );
}
