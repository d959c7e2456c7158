import { Controller, Get, Param } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { MemberProgressView, StudentsView } from './progress.dto.js';
import { ProgressService } from './progress.service.js';

/** How far members are with their checkouts. */
@ApiTags('checkouts')
@Controller()
export class ProgressController {
  constructor(private readonly progress: ProgressService) {}

  @Get('members/:memberId/checkout-progress')
  @ApiRoute({
    id: 'readCheckoutProgress',
    summary: 'How far a member is with every checkout the club asks for',
    description: 'Items, quiz, prerequisites and sign-offs, and changes of aircraft still to be shown.',
    answer: MemberProgressView,
    refuses: [403, 404],
  })
  ofMember(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
  ): Promise<MemberProgressView> {
    return this.progress.ofMember(by, memberId);
  }

  @Get('instructor/students')
  @Roles('instructor')
  @ApiRoute({
    id: 'listStudents',
    summary: 'Your students, and what is left for each',
    answer: StudentsView,
    refuses: [403],
  })
  students(@CurrentUser() by: SignedIn): Promise<StudentsView> {
    return this.progress.students(by);
  }
}
