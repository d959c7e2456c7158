import { Body, Controller, Get, Param, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { MemberLimitsView, SetLimitsDto } from './limits.dto.js';
import { LimitsService } from './limits.service.js';

/** Limits beyond the law. */
@ApiTags('members')
@Controller('members/:memberId/limits')
export class LimitsController {
  constructor(private readonly limits: LimitsService) {}

  @Get()
  @ApiRoute({
    id: 'readLimits',
    summary: "A member's limits for wind, weather, runways and the night",
    description:
      'Their own, which flights are held against as advice; and those an instructor set, which bind a student as a club rule.',
    answer: MemberLimitsView,
    refuses: [403, 404],
  })
  read(
    @CurrentUser() person: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
  ): Promise<MemberLimitsView> {
    return this.limits.read(person, memberId);
  }

  @Post()
  @ApiRoute({
    id: 'setLimits',
    summary: 'Set limits: one’s own, or as an instructor somebody else’s',
    description:
      'A whole set takes the place of the one before. One’s own get stricter at once; looser figures hold from a later day (club.limits.looser-after-days). The same set again writes nothing.',
    answer: MemberLimitsView,
    status: 201,
    refuses: [403, 404, 422],
  })
  set(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Body() body: SetLimitsDto,
  ): Promise<MemberLimitsView> {
    return this.limits.set(by, memberId, body);
  }
}
