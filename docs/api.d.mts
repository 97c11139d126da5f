export const modules: string[];
export function apiPages(): Map<string, string>;
export function pagePath(module: string): string;
