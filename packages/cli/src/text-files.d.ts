// Files that the bundle holds as text.

declare module '*.yaml' {
  const text: string;
  export default text;
}
declare module '*.csv' {
  const text: string;
  export default text;
}
