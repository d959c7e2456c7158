import { Module, type DynamicModule } from '@nestjs/common';
import { AccountsModule } from './accounts/accounts.module.js';
import { ACCOUNT_ENTITIES } from './accounts/entities.js';
import { BookingsModule } from './bookings/bookings.module.js';
import { CheckoutsModule } from './checkouts/checkouts.module.js';
import { CHECKOUT_ENTITIES } from './checkouts/entities.js';
import { ClubsModule } from './clubs/clubs.module.js';
import { CLUB_ENTITIES } from './clubs/entities.js';
import { DecisionsModule } from './decisions/decisions.module.js';
import { FLEET_ENTITIES } from './fleet/entities.js';
import { FleetModule } from './fleet/fleet.module.js';
import { MAINTENANCE_ENTITIES } from './maintenance/entities.js';
import { MaintenanceModule } from './maintenance/maintenance.module.js';
import { LOGBOOK_ENTITIES } from './logbook/entities.js';
import { LogbookModule } from './logbook/logbook.module.js';
import { MEMBER_ENTITIES } from './members/entities.js';
import { MembersModule } from './members/members.module.js';
import { NoticesModule } from './notices/notices.module.js';
import type { AppConfig } from './platform/config.js';
import type { Database } from './platform/database/open.js';
import { PlatformModule } from './platform/platform.module.js';
import { PRACTICE_ENTITIES } from './practice/entities.js';
import { PracticeModule } from './practice/practice.module.js';
import { SAFETY_ENTITIES } from './safety/entities.js';
import { SafetyModule } from './safety/safety.module.js';
import { StandingModule } from './standing/standing.module.js';
import { WebModule } from './web/web.module.js';

/** Every table that is read or written through TypeORM; bookings and decisions speak SQL. */
export const ENTITIES = [
  ...ACCOUNT_ENTITIES,
  ...CLUB_ENTITIES,
  ...FLEET_ENTITIES,
  ...MAINTENANCE_ENTITIES,
  ...MEMBER_ENTITIES,
  ...LOGBOOK_ENTITIES,
  ...CHECKOUT_ENTITIES,
  ...PRACTICE_ENTITIES,
  ...SAFETY_ENTITIES,
];

/** The whole service. */
@Module({})
export class AppModule {
  static register(config: AppConfig, database: Pick<Database, 'dataSourceOptions'>): DynamicModule {
    return {
      module: AppModule,
      imports: [
        PlatformModule.register(config, database, ENTITIES),
        AccountsModule,
        ClubsModule,
        FleetModule,
        MembersModule,
        LogbookModule,
        CheckoutsModule,
        DecisionsModule,
        BookingsModule,
        StandingModule,
        MaintenanceModule,
        PracticeModule,
        SafetyModule,
        NoticesModule,
        WebModule,
      ],
    };
  }
}
