import { Body, Controller, Get, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { DEFAULT_PAGE_LIMIT } from '../../platform/http/pages.js';
import { ChainDto, ReplayAllDto, ReplaysDto, VerificationDto, VerifyDto } from './audit.dto.js';
import { AuditService } from './audit.service.js';

@ApiTags('audit')
@Controller('audit')
@Roles('safety-officer', 'administrator')
export class AuditController {
  constructor(private readonly audit: AuditService) {}

  @Get('chain')
  @ApiRoute({
    id: 'readChain',
    summary: 'How far the chain of decisions goes, with a receipt of its last link',
    answer: ChainDto,
    refuses: [403],
  })
  chain(@CurrentUser() user: SignedIn): Promise<ChainDto> {
    return this.audit.chain(user);
  }

  @Post('seal')
  @ApiRoute({
    id: 'sealChain',
    summary: 'Seals now what is not sealed yet, and gives a receipt that covers it',
    answer: ChainDto,
    refuses: [403],
  })
  seal(@CurrentUser() user: SignedIn): Promise<ChainDto> {
    return this.audit.seal(user);
  }

  @Post('verify')
  @ApiRoute({
    id: 'verifyChain',
    summary: 'Makes the links again from the records they seal, and names the first that does not hold',
    answer: VerificationDto,
    refuses: [403, 422],
  })
  verify(@CurrentUser() user: SignedIn, @Body() body: VerifyDto): Promise<VerificationDto> {
    return this.audit.verify(user, body);
  }

  @Post('replay')
  @ApiRoute({
    id: 'replayDecisions',
    summary: 'Judges stored decisions again, a page at a time, and tells which differ and why',
    answer: ReplaysDto,
    refuses: [403],
  })
  replay(@CurrentUser() user: SignedIn, @Body() body: ReplayAllDto): Promise<ReplaysDto> {
    return this.audit.replay(user, { limit: body.limit ?? DEFAULT_PAGE_LIMIT, cursor: body.cursor });
  }
}
