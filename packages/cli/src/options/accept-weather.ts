/** The option of every command that runs years. */
export interface AcceptWeather {
  acceptWeather?: boolean;
}

export const acceptWeather = ['--accept-weather', 'go on with weather that is rejected, a warning first'] as const;
