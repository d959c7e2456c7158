import { Controller, Get, Param, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import { notThere } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/index.js';
import { DisplacementsDto } from './displacements.dto.js';
import { openDisplacements, putAway } from './displacements.sql.js';

/** A member's flights that had to make room for the shop. */
@ApiTags('bookings')
@Controller('displacements')
export class DisplacementsController {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  @Get()
  @ApiRoute({
    id: 'listDisplacements',
    summary: 'My flights that had to make room for the shop, still to come',
    answer: DisplacementsDto,
    refuses: [],
  })
  async list(@CurrentUser() user: SignedIn): Promise<DisplacementsDto> {
    const items = await this.db.run(
      user.clubId,
      (em) => openDisplacements(em, user.memberId, this.clock.now()),
      {
        readOnly: true,
      },
    );
    return { items };
  }

  @Post(':id/seen')
  @ApiRoute({
    id: 'putDisplacementAway',
    summary: 'I have seen it, or found another way',
    answer: null,
    refuses: [404],
  })
  async seen(@CurrentUser() user: SignedIn, @Param('id', UuidPipe) id: string): Promise<void> {
    const { clubId, memberId } = user;
    const found = await this.db.run(clubId, (em) => putAway(em, { id, memberId, now: this.clock.now() }), {
      actorId: memberId,
    });
    if (!found) throw notThere('displaced flight of yours');
  }
}
