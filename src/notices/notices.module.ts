import { Module } from '@nestjs/common';
import { MaintenanceModule } from '../maintenance/maintenance.module.js';
import { SafetyModule } from '../safety/safety.module.js';
import { StandingModule } from '../standing/standing.module.js';
import { FeedsController } from './feeds/feeds.controller.js';
import { FeedsService } from './feeds/feeds.service.js';
import { LiveController } from './live/live.controller.js';
import { LiveService } from './live/live.service.js';
import './notices.constraints.js';
import { NoticesController } from './notices.controller.js';
import './notices.problems.js';
import { NoticesService } from './notices.service.js';
import { NoticesWorker } from './notices.worker.js';
import { Deliveries } from './outbox/deliver.js';
import { MailController } from './outbox/mail.controller.js';
import { Mailer } from './outbox/mailer.js';
import { Settling } from './outbox/settle.js';
import { WaysFinder } from './outbox/ways-finder.js';
import { PreferencesController } from './preferences/preferences.controller.js';
import { PreferencesService } from './preferences/preferences.service.js';
import { LapseReminders } from './reminders/lapse-reminders.js';
import { MaintenanceWarnings } from './reminders/maintenance-warnings.js';
import { UnsubscribeAddresses } from './unsubscribe/unsubscribe-address.js';
import { UnsubscribeController } from './unsubscribe/unsubscribe.controller.js';

/** What people are told: on the page, by mail, in their calendars, and while a page is open. */
@Module({
  imports: [StandingModule, SafetyModule, MaintenanceModule],
  controllers: [
    NoticesController,
    PreferencesController,
    UnsubscribeController,
    MailController,
    FeedsController,
    LiveController,
  ],
  providers: [
    NoticesService,
    NoticesWorker,
    PreferencesService,
    UnsubscribeAddresses,
    Mailer,
    Settling,
    WaysFinder,
    Deliveries,
    LapseReminders,
    MaintenanceWarnings,
    FeedsService,
    LiveService,
  ],
})
export class NoticesModule {}
