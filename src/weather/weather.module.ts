import { Module } from '@nestjs/common';
import { defineProblems } from '../platform/problems/problem-catalogue.js';
import { WeatherSource } from './source/weather-source.js';
import { WeatherWorker } from './rounds/weather.worker.js';
import './weather.constraints.js';
import { WeatherService } from './weather.service.js';

defineProblems({
  code: 'report-unreadable',
  status: 422,
  title: 'The weather report cannot be used',
  detail:
    'A pasted report is read word for word. Copy it whole, of about now, and of an airfield of the club.',
});

/** Weather reports: fetched from the configured source, pasted, and read. */
@Module({ providers: [WeatherSource, WeatherService, WeatherWorker], exports: [WeatherService] })
export class WeatherModule {}
