/** The option of every command that runs years. */
export interface AcceptWeather {
  acceptWeather?: boolean;
}

export const acceptWeather = [
  '--accept-weather',
  'go on with weather that is rejected; a warning then stands first',
] as const;
