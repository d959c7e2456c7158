import { Module } from '@nestjs/common';
import './decisions.problems.js';
import { DecisionsController } from './decisions.controller.js';
import { DecisionsService } from './decisions.service.js';

@Module({ controllers: [DecisionsController], providers: [DecisionsService], exports: [DecisionsService] })
export class DecisionsModule {}
